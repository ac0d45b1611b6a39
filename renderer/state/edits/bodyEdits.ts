import { CHASSIS_BODY, type Motion, type Project } from '../../../shared/document/project/schema.ts';
import { bodyOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { freshId } from './freshId.ts';
import { withPartIn } from './partGroups.ts';

/** Puts a part of the bay on a body, or back on the chassis (`null`). `parts`: names of all parts of the bay. */
export function setPartBody(project: Project, part: string, bodyId: string | null, parts: readonly string[]): Project {
  if (bodyOfPart(project, part).id === (bodyId ?? CHASSIS_BODY.id)) return project;
  return { ...project, bay: { ...project.bay, bodies: withPartIn(project.bay.bodies, part, bodyId, parts) } };
}

/** Adds a body without parts, at the end. */
export function addBody(project: Project, name: string): { readonly project: Project; readonly id: string } {
  const id = freshId(name, 'body', [...project.bay.bodies, CHASSIS_BODY]);
  const bodies = [...project.bay.bodies, { id, name, parts: [] }];
  return { project: { ...project, bay: { ...project.bay, bodies } }, id };
}

/** Changes a body's name or how it moves; `null` = it stands still. */
export function changeBody(
  project: Project,
  bodyId: string,
  change: { readonly name?: string; readonly motion?: Motion | null },
): Project {
  const bodies = project.bay.bodies.map((body) => {
    if (body.id !== bodyId) return body;
    const { motion, ...still } = body;
    const moves = change.motion === undefined ? motion : (change.motion ?? undefined);
    return { ...still, name: change.name ?? body.name, ...(moves === undefined ? {} : { motion: moves }) };
  });
  return { ...project, bay: { ...project.bay, bodies } };
}

/** Takes a body away: its parts, ports and supports are on the chassis then. */
export function removeBody(project: Project, bodyId: string): Project {
  const off = <T extends { readonly body?: string | undefined }>(thing: T): T => {
    if (thing.body !== bodyId) return thing;
    const { body: _, ...rest } = thing;
    return rest as T;
  };
  return {
    ...project,
    bay: { ...project.bay, bodies: project.bay.bodies.filter(({ id }) => id !== bodyId) },
    ports: project.ports.map(off),
    runs: project.runs.map((run) => ({ ...run, supports: run.supports.map(off) })),
  };
}

/** A motion of nothing about a place: what a body that begins to move has. */
export function stillMotion(pivot: readonly [number, number, number]): Motion {
  return {
    pivot: [...pivot],
    rollDeg: [0, 0],
    pitchDeg: [0, 0],
    yawDeg: [0, 0],
    shiftMm: { x: [0, 0], y: [0, 0], z: [0, 0] },
  };
}
