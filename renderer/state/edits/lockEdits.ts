import { bad, good, type Result } from '../../../shared/base/result.ts';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Lock, Project, Run } from '../../../shared/document/project/schema.ts';
import { nearestArc, placeAt } from '../layPlaces.ts';
import { freePart, supportArc } from '../supportPlaces.ts';
import { numberedId } from './freshId.ts';
import { withRun } from './withRun.ts';

/** A stretch of a laid hose, mm from shoulder A. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** What of a locked stretch is pulled: one of its ends, or all of it. */
export type LockGrip = 'from' | 'to' | 'whole';

/** mm. A stretch shorter than this holds nothing that a clamp does not. */
export const SHORTEST_LOCK_MM = 10;

/** The stretch between two places along the hose, in whichever order; null where it is too short to be one. */
export function stretchBetween(lay: Lay, oneMm: number, otherMm: number): Stretch | null {
  const whole = freePart(lay);
  const fromMm = Math.max(whole.fromMm, Math.min(oneMm, otherMm));
  const toMm = Math.min(whole.toMm, Math.max(oneMm, otherMm));
  return toMm - fromMm < SHORTEST_LOCK_MM ? null : { fromMm, toMm };
}

/** A stretch to begin with where none has been marked yet. */
export function middleThird(lay: Lay): Stretch {
  const { fromMm, toMm } = freePart(lay);
  const third = (toMm - fromMm) / 3;
  return { fromMm: fromMm + third, toMm: toMm - third };
}

/** A lock of a stretch as the hose lies now, or why there is none. */
export function lockOf(lay: Lay, run: Run, stretch: Stretch): Result<Lock> {
  const whole = freePart(lay);
  const fromMm = Math.max(whole.fromMm, Math.min(stretch.fromMm, stretch.toMm));
  const toMm = Math.min(whole.toMm, Math.max(stretch.fromMm, stretch.toMm));
  const [start, end] = [placeAt(lay.centreline, fromMm), placeAt(lay.centreline, toMm)];
  if (start === null || end === null || toMm - fromMm < SHORTEST_LOCK_MM)
    return refused(`it has to be ${SHORTEST_LOCK_MM} mm or longer and between the collars`);
  if (meetsLock(lay, run, { fromMm, toMm })) return refused('a part of it is locked already; unlock that first');
  const between = lay.centreline.points.filter((_, i) => {
    const arc = lay.centreline.arcLengthMm[i] as number;
    return arc > fromMm + CLOSE_MM && arc < toMm - CLOSE_MM;
  });
  const before = run.supports.filter((support) => supportArc(lay, support) <= fromMm).at(-1);
  return good({
    id: numberedId('lock', run.locks ?? []),
    ...(before === undefined ? {} : { after: before.id }),
    points: [start.point, ...between, end.point].map((p): [number, number, number] => [p[0], p[1], p[2]]),
    startAxis: [...start.along],
    endAxis: [...end.along],
  });
}

function refused(message: string): Result<never> {
  return bad([{ path: '', message }]);
}

/** mm. A point of the centreline this near to an end of the stretch is left out: what its coordinates are rounded by would bend the hose there. */
const CLOSE_MM = 1.5;

/** Adds a lock in its place along the hose. */
export function addLock(project: Project, lay: Lay, lock: Lock): Project {
  const startOf = ({ points }: Lock): number => nearestArc(lay.centreline, points[0] as Vec3);
  return withRun(project, lay.run, (run) => ({
    ...run,
    locks: [...(run.locks ?? []), lock].sort((p, q) => startOf(p) - startOf(q)),
  }));
}

/** Whether a stretch runs over one that is locked already. */
function meetsLock(lay: Lay, run: Run, stretch: Stretch): boolean {
  return (run.locks ?? []).some((lock) => {
    const held = stretchOf(lay, lock);
    return held.fromMm < stretch.toMm && held.toMm > stretch.fromMm;
  });
}

/** Where a lock lies along the hose as it is laid. */
export function stretchOf(lay: Lay, { points }: Lock): Stretch {
  const [from, to] = [points[0] as Vec3, points.at(-1) as Vec3].map((p) => nearestArc(lay.centreline, p));
  return { fromMm: from as number, toMm: to as number };
}

/** A lock with other ends, as the hose lies there now; the hose between is taken anew, and it keeps its name. */
export function movedLock(lay: Lay, run: Run, lockId: string, stretch: Stretch): Result<Lock> {
  const others = { ...run, locks: (run.locks ?? []).filter(({ id }) => id !== lockId) };
  const made = lockOf(lay, others, stretch);
  return made.ok ? good({ ...made.value, id: lockId }) : made;
}

/**
 * Where a locked stretch goes that is pulled along the hose by one of its ends, or whole: within the free part of the hose,
 * never shorter than a lock may be, and whole at its length.
 */
export function slidStretch(lay: Lay, { fromMm, toMm }: Stretch, grip: LockGrip, byMm: number): Stretch {
  const whole = freePart(lay);
  const kept = (mm: number, low: number, high: number): number => Math.max(low, Math.min(high, mm));
  if (grip === 'from') return { fromMm: kept(fromMm + byMm, whole.fromMm, toMm - SHORTEST_LOCK_MM), toMm };
  if (grip === 'to') return { fromMm, toMm: kept(toMm + byMm, fromMm + SHORTEST_LOCK_MM, whole.toMm) };
  const by = kept(byMm, whole.fromMm - fromMm, whole.toMm - toMm);
  return { fromMm: fromMm + by, toMm: toMm + by };
}

export function removeLock(project: Project, runId: string, lockId: string): Project {
  return withRun(project, runId, ({ locks, ...run }) => {
    const kept = (locks ?? []).filter(({ id }) => id !== lockId);
    return kept.length === 0 ? run : { ...run, locks: kept };
  });
}
