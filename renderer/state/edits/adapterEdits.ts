import { SAME_POINT_MM } from '../../../shared/base/tolerances.ts';
import { distance } from '../../../shared/base/vec3.ts';
import type { Adapter } from '../../../shared/document/parts/schema.ts';
import { outletOf, seatsOn } from '../../../shared/document/project/adapterFit.ts';
import type { AdapterUse, Port, Project } from '../../../shared/document/project/schema.ts';
import { changePort, newPort } from './portEdits.ts';

/** How an adapter is turned: to one clock, or, of a taper thread, to any of a range. */
export type AdapterClock = Pick<AdapterUse, 'clockDeg'> | Pick<AdapterUse, 'clockRangeDeg'>;

/** deg. What a taper elbow is given to begin with: an eighth of a turn either way. */
const FIRST_RANGE_DEG: [number, number] = [-45, 45];

/** An adapter as it is put on: a taper that is not straight has a range, another that turns stands at 0. */
function newUse(adapter: Adapter): AdapterUse {
  const use = { adapter: adapter.id, outlet: 'straight' } as const;
  if (adapter.bendAngleDeg === 0 && adapter.form !== 'tee') return use;
  return adapter.turning === 'taper' ? { ...use, clockRangeDeg: [...FIRST_RANGE_DEG] } : { ...use, clockDeg: 0 };
}

/** Puts an adapter on a port, on top of what is there. */
export function addAdapter(project: Project, portId: string, adapter: Adapter): Project {
  return withStack(project, portId, (stack) => [...stack, newUse(adapter)]);
}

/** Another adapter in the place of one; its clock is kept where it still means something. */
export function chooseAdapter(project: Project, portId: string, place: number, adapter: Adapter): Project {
  return withShared(project, portId, place, (old) => {
    const use = newUse(adapter);
    const outlet = adapter.form === 'tee' ? old.outlet : 'straight';
    return use.clockDeg === undefined || old.clockDeg === undefined
      ? { ...use, outlet }
      : { ...use, outlet, clockDeg: old.clockDeg };
  });
}

/** Turns an adapter. */
export function turnAdapter(project: Project, portId: string, place: number, clock: AdapterClock): Project {
  return withShared(project, portId, place, ({ adapter, outlet }) => ({ adapter, outlet, ...clock }));
}

/** Goes on from the other outlet of a tee; a port that goes on from that one changes to this. */
export function swapOutlet(project: Project, portId: string, place: number): Project {
  return withShared(project, portId, place, (use) => ({
    ...use,
    outlet: use.outlet === 'branch' ? 'straight' : 'branch',
  }));
}

/** Moves an adapter one place out (1) or in (-1). */
export function moveAdapter(project: Project, portId: string, place: number, by: 1 | -1): Project {
  return withStack(project, portId, (stack) => {
    const [moved, other] = [stack[place], stack[place + by]];
    if (moved === undefined || other === undefined) return stack;
    return stack.map((use, i) => (i === place ? other : i === place + by ? moved : use));
  });
}

export function removeAdapter(project: Project, portId: string, place: number): Project {
  return withStack(project, portId, (stack) => stack.filter((_, i) => i !== place));
}

/** A port for the other outlet of a tee, named after the port that has it; the one there is already where there is one. */
export function addOtherOutlet(
  project: Project,
  portId: string,
  place: number,
): { readonly project: Project; readonly port: string } {
  const port = project.ports.find(({ id }) => id === portId);
  const tee = port?.adapters?.[place];
  const known = project.ports.find((p) => p.id !== portId && port !== undefined && shares(port, p, place));
  if (port === undefined || tee === undefined || known !== undefined) return { project, port: known?.id ?? portId };
  const { id, name: _, ...blank } = newPort(project, port, []);
  const other: AdapterUse = { ...tee, outlet: tee.outlet === 'branch' ? 'straight' : 'branch' };
  const added: Port = {
    ...blank,
    ...port,
    id,
    name: `${port.name}, ${other.outlet === 'branch' ? 'branch' : 'straight on'}`,
    adapters: [...(port.adapters ?? []).slice(0, place), other],
  };
  return { project: { ...project, ports: [...project.ports, added] }, port: id };
}

/** Adapters of a table for a place in a stack, those that go on what is below first. */
export function adaptersFor(
  table: readonly Adapter[],
  below: { readonly seat: string; readonly dash: number },
): readonly { readonly adapter: Adapter; readonly fits: boolean }[] {
  return table
    .map((adapter) => ({ adapter, fits: seatsOn(below, { seat: adapter.portSeat, dash: adapter.portDash }) }))
    .sort((p, q) => Number(q.fits) - Number(p.fits));
}

/** What a place in a stack goes on: the port, or the outlet of the adapter below. */
export function seatBelow(port: Port, place: number, table: readonly Adapter[]): { seat: string; dash: number } {
  const use = port.adapters?.[place - 1];
  const adapter = table.find(({ id }) => id === use?.adapter);
  return use === undefined || adapter === undefined ? port : outletOf({ adapter, use });
}

function withStack(project: Project, portId: string, change: (stack: AdapterUse[]) => AdapterUse[]): Project {
  const port = project.ports.find(({ id }) => id === portId);
  if (port === undefined) return project;
  const adapters = change(port.adapters ?? []);
  if (adapters.length > 0) return changePort(project, portId, { adapters });
  const { adapters: before, ...bare } = port;
  if (before === undefined) return project;
  return { ...project, ports: project.ports.map((p) => (p.id === portId ? bare : p)) };
}

/** Changes one adapter, and with it that of the port on the other outlet of the same tee, if this one is shared. */
function withShared(project: Project, portId: string, place: number, change: (use: AdapterUse) => AdapterUse): Project {
  const port = project.ports.find(({ id }) => id === portId);
  if (port === undefined) return project;
  const sharing = project.ports.filter((p) => p === port || shares(port, p, place));
  return sharing.reduce(
    (now, { id }) => withStack(now, id, (stack) => stack.map((use, i) => (i === place ? change(use) : use))),
    project,
  );
}

/** Whether two ports stand on one seat and share their adapters up to a place, of which they may go on from other outlets. */
function shares(port: Port, other: Port, place: number): boolean {
  const upTo = (p: Port): string =>
    JSON.stringify(
      (p.adapters ?? []).slice(0, place + 1).map((use, i) => (i === place ? { ...use, outlet: '' } : use)),
    );
  return (
    distance(port.seatPoint, other.seatPoint) < SAME_POINT_MM &&
    (other.adapters ?? []).length > place &&
    upTo(port) === upTo(other)
  );
}
