import { UP_ALONG_AXIS_RAD } from '../../../shared/base/tolerances.ts';
import { anySquareTo, length, rejectFrom, UP, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import type { Port, Project } from '../../../shared/document/project/schema.ts';
import { freshId } from './freshId.ts';

/** Where a port sits and how it looks. */
export interface Seat {
  readonly seatPoint: Vec3;
  /** out of the part; any length above zero */
  readonly axis: Vec3;
}

/** A port's 12 o'clock when nobody has said one: the bay's up made square to the axis, or some square where it lies along it. */
export function upFor(axis: Vec3, wanted: Vec3 = UP): Vec3 {
  const along = unit(axis);
  const square = rejectFrom(unit(wanted), along);
  return length(square) > Math.sin(UP_ALONG_AXIS_RAD) ? unit(square) : anySquareTo(along);
}

/** A new port on a seat, named by its number, of the dash size and seat that most ports of the project have. */
export function newPort(
  project: Project,
  seat: Seat,
  ends: readonly { seat: string; dash: number }[],
  body?: string,
): Port {
  const name = freshName(project);
  return {
    id: freshId(name, 'port', project.ports),
    name,
    seatPoint: tuple(seat.seatPoint),
    axis: tuple(seat.axis),
    up: tuple(upFor(seat.axis)),
    seat: commonest(project.ports.map((p) => p.seat)) ?? ends[0]?.seat ?? 'flare-37',
    dash: commonest(project.ports.map((p) => p.dash)) ?? ends[0]?.dash ?? 8,
    ...(body === undefined ? {} : { body }),
  };
}

function freshName(project: Project): string {
  let n = project.ports.length + 1;
  while (project.ports.some((port) => port.name === `Port ${n}`)) n++;
  return `Port ${n}`;
}

function commonest<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((p, q) => q[1] - p[1])[0]?.[0];
}

function tuple(v: Vec3): [number, number, number] {
  return [v[0], v[1], v[2]];
}

export function addPort(project: Project, port: Port): Project {
  return { ...project, ports: [...project.ports, port] };
}

/** Changes a port. A new axis takes 12 o'clock along, made square to it again. */
export function changePort(project: Project, portId: string, change: Partial<Omit<Port, 'id'>>): Project {
  const ports = project.ports.map((port) => (port.id === portId ? { ...port, ...change } : port));
  const same = ports.every((port, i) => JSON.stringify(port) === JSON.stringify(project.ports[i]));
  return same ? project : { ...project, ports };
}

/** What the part is made of that the port is in; undefined = not said. */
export function setPortMaterial(project: Project, portId: string, material: Port['material']): Project {
  const ports = project.ports.map((port) => {
    if (port.id !== portId || port.material === material) return port;
    const { material: _old, ...bare } = port;
    return material === undefined ? bare : { ...bare, material };
  });
  return ports.every((port, i) => port === project.ports[i]) ? project : { ...project, ports };
}

/** boreMm: of the hole behind the seat, above 0; undefined = not known. */
export function setPortBore(project: Project, portId: string, boreMm: number | undefined): Project {
  const ports = project.ports.map((port) => {
    if (port.id !== portId) return port;
    const { boreMm: _old, ...bare } = port;
    return boreMm === undefined ? bare : { ...bare, boreMm };
  });
  return { ...project, ports };
}

/** Whether a port is in a firewall, so that what is screwed in it has to stand fire. */
export function setPortInFirewall(project: Project, portId: string, inFirewall: boolean): Project {
  const ports = project.ports.map((port) => {
    if (port.id !== portId) return port;
    const { inFirewall: _old, ...bare } = port;
    return inFirewall ? { ...bare, inFirewall } : bare;
  });
  return { ...project, ports };
}

/** The rigid line that ends at a port; undefined = none does, or that is not said. */
export function setRigidLine(project: Project, portId: string, rigidLine: Port['rigidLine']): Project {
  const ports = project.ports.map((port) => {
    if (port.id !== portId) return port;
    const { rigidLine: _old, ...bare } = port;
    return rigidLine === undefined ? bare : { ...bare, rigidLine };
  });
  return { ...project, ports };
}

/** A port put on another place; its 12 o'clock stays as near to what it was as the new axis lets it. */
export function seatPort(project: Project, portId: string, seat: Seat): Project {
  const port = project.ports.find(({ id }) => id === portId);
  if (port === undefined) return project;
  const { axis, seatPoint } = seat;
  return changePort(project, portId, {
    seatPoint: tuple(seatPoint),
    axis: tuple(axis),
    up: tuple(upFor(axis, port.up)),
  });
}

/** A port without a body belongs to the chassis. */
export function setPortBody(project: Project, portId: string, body: string | undefined): Project {
  const ports = project.ports.map((port) => {
    if (port.id !== portId || port.body === body) return port;
    const { body: _old, ...rest } = port;
    return body === undefined ? rest : { ...rest, body };
  });
  return ports.every((port, i) => port === project.ports[i]) ? project : { ...project, ports };
}

/** Names of the runs that join this port. */
export function runsAt(project: Project, portId: string): readonly string[] {
  return project.runs.filter((run) => run.a.port === portId || run.b.port === portId).map((run) => run.name);
}

/** Takes a port away; one that a run joins stays, since the run would end in the air. */
export function removePort(project: Project, portId: string): Project {
  if (runsAt(project, portId).length > 0) return project;
  return { ...project, ports: project.ports.filter(({ id }) => id !== portId) };
}
