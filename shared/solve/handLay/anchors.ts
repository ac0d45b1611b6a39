import { distance, unit, type Vec3 } from '../../base/vec3.ts';
import type { HandChange } from '../../document/hand/handChange.ts';
import type { Lock, Support } from '../../document/project/schema.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { nearestArcMm } from '../../geometry/nearestArc.ts';
import { type EndSetting, type RunSetting, tailPose } from '../layRun/runSetting.ts';
import { passingDirection } from './passingDirection.ts';
import { poseAt, type TakenLay } from './takenLay.ts';

/** A place at which something has hold of the run: as the run was taken, and now. */
export interface Anchor {
  readonly id: string;
  /** `pull`: the hose's direction is free there; at all others place and direction are held */
  readonly kind: 'end' | 'clamp' | 'pass-through' | 'lock-start' | 'lock-end' | 'pull';
  readonly proposed: boolean;
  /** arc length from shoulder A on the taken lay, mm */
  readonly takenAtMm: number;
  readonly taken: Pose;
  /** of a pull, the direction is that of the shortest line through it */
  readonly now: Pose;
}

export const HAND = 'hand';

/**
 * Everything that has hold of the run between the two ends, in order along it: supports known to the lay, new ones where the
 * hose lay nearest to them, clamps the program proposed, locked stretches, waypoints that moved and the hand's own pull.
 * A proposed clamp gives way to a hand near by. What stands within a locked stretch holds nothing more; nor does a pull where the hose is held anyway.
 * clocks: of the two ends, rad.
 */
export function anchorsOf(
  taken: TakenLay,
  before: TakenRun,
  setting: RunSetting,
  change: HandChange,
  locked: readonly Lock[],
  clocks: { readonly a: number; readonly b: number },
): Anchor[] {
  const { lay } = taken;
  const { a: tailA, b: tailB } = lay.straightTailMm;
  const first = setting.a.end.shoulderToMouthMm + tailA;
  const last = lay.cutLengthMm - setting.b.end.shoulderToMouthMm - tailB;
  const locks = locked.flatMap((lock) => lockAnchors(taken, lock));
  const inLock = (at: number): boolean =>
    locks.some(
      ({ kind, takenAtMm }, i) => kind === 'lock-start' && at > takenAtMm && at < (locks[i + 1] as Anchor).takenAtMm,
    );
  const wanted = pullsOf(taken, before.supports, change);
  const proposed = proposedAnchors(taken).filter((clamp) =>
    wanted.every((pull) => Math.abs(pull.takenAtMm - clamp.takenAtMm) > GIVES_WAY_MM),
  );
  const holds = [...supportAnchors(taken, change.supports ?? before.supports), ...proposed].filter(
    ({ takenAtMm }) => takenAtMm > first - NEAR_END_MM && takenAtMm < last + NEAR_END_MM && !inLock(takenAtMm),
  );
  const all = [
    endAnchor('a', first, tailPose(before.a, 'a', tailA, before.clocks.a), tailPose(setting.a, 'a', tailA, clocks.a)),
    ...[...holds, ...locks].sort((x, y) => x.takenAtMm - y.takenAtMm),
    endAnchor('b', last, tailPose(before.b, 'b', tailB, before.clocks.b), tailPose(setting.b, 'b', tailB, clocks.b)),
  ];
  const isFree = (at: number): boolean =>
    at > first && at < last && !inLock(at) && all.every((h) => Math.abs(h.takenAtMm - at) > NEAR_HOLD_MM);
  const pulls = wanted.filter((p) => isFree(p.takenAtMm));
  for (const pull of pulls.sort((x, y) => x.takenAtMm - y.takenAtMm)) addPull(all, taken, pull, setting.minRadiusMm);
  return all;
}

/** The run as it was taken. */
export interface TakenRun {
  readonly a: EndSetting;
  readonly b: EndSetting;
  readonly clocks: { readonly a: number; readonly b: number };
  readonly supports: readonly Support[];
}

/** Puts a pull among the anchors, passed in the direction of the shortest line between its neighbours, then and now. */
function addPull(all: Anchor[], taken: TakenLay, { id, takenAtMm, to }: Pull, radiusMm: number): void {
  const at = all.findIndex((anchor) => anchor.takenAtMm > takenAtMm);
  const [from, next] = [all[at - 1] as Anchor, all[at] as Anchor];
  const there = poseAt(taken, takenAtMm);
  const was = passingDirection(from.taken, there.point, next.taken, radiusMm, there.direction);
  const now = passingDirection(from.now, to, next.now, radiusMm, was);
  all.splice(at, 0, {
    id,
    kind: 'pull',
    proposed: false,
    takenAtMm,
    taken: { point: there.point, direction: was },
    now: { point: to, direction: now },
  });
}

/** mm. A clamp may stand at the very end of a tail, and rounding may put it a little into it. */
const NEAR_END_MM = 0.5;
/** mm. A clamp that is only proposed gives way to a hand, or to a stated clamp, this near to it: that holds the hose there instead. */
export const GIVES_WAY_MM = 80;
/** mm. Nearer to a clamp than this nobody can pull a hose aside. */
const NEAR_HOLD_MM = 4;

interface Pull {
  readonly id: string;
  readonly takenAtMm: number;
  readonly to: Vec3;
}

/** The hand's own pull, and waypoints that are new or moved: while it is led there, the hose goes through them. */
function pullsOf(taken: TakenLay, before: readonly Support[], change: HandChange): Pull[] {
  const { points, arcLengthMm } = taken.lay.centreline;
  const led = (change.supports ?? []).flatMap((s): Pull[] => {
    const was = before.find((b) => b.id === s.id);
    if (s.kind !== 'waypoint' || (was !== undefined && distance(was.point, s.point) === 0)) return [];
    return [{ id: s.id, takenAtMm: nearestArcMm(points, arcLengthMm, was?.point ?? s.point), to: s.point }];
  });
  const { pull } = change;
  return pull === undefined ? led : [...led, { id: HAND, takenAtMm: pull.arcLengthMm, to: pull.to }];
}

function endAnchor(id: string, takenAtMm: number, taken: Pose, now: Pose): Anchor {
  return { id, kind: 'end', proposed: false, takenAtMm, taken, now };
}

function supportAnchors(taken: TakenLay, supports: readonly Support[]): Anchor[] {
  const { points, arcLengthMm } = taken.lay.centreline;
  return supports.flatMap((s): Anchor[] => {
    if (s.kind === 'waypoint' || s.axis === undefined) return [];
    const known = taken.lay.supports.find((l) => l.id === s.id && !l.proposed);
    const takenAtMm = known?.at.arcLengthMm ?? nearestArcMm(points, arcLengthMm, s.point);
    const was: Pose = known === undefined ? poseAt(taken, takenAtMm) : { point: known.at.point, direction: known.axis };
    const now: Pose = { point: s.point, direction: unit(s.axis) };
    return [{ id: s.id, kind: s.kind, proposed: false, takenAtMm, taken: was, now }];
  });
}

function proposedAnchors(taken: TakenLay): Anchor[] {
  return taken.lay.supports.flatMap(({ id, kind, proposed, at, axis }): Anchor[] => {
    if (!proposed || kind === 'waypoint') return [];
    const pose: Pose = { point: at.point, direction: axis };
    return [{ id, kind, proposed, takenAtMm: at.arcLengthMm, taken: pose, now: pose }];
  });
}

function lockAnchors(taken: TakenLay, { id, points, startAxis, endAxis }: Lock): Anchor[] {
  const { points: line, arcLengthMm } = taken.lay.centreline;
  const at = (place: Vec3): number => nearestArcMm(line, arcLengthMm, place);
  const anchor = (kind: 'lock-start' | 'lock-end', point: Vec3, axis: Vec3): Anchor => {
    const pose: Pose = { point, direction: unit(axis) };
    return { id: `${id}/${kind}`, kind, proposed: false, takenAtMm: at(point), taken: pose, now: pose };
  };
  const [start, end] = [
    anchor('lock-start', points[0] as Vec3, startAxis),
    anchor('lock-end', points[points.length - 1] as Vec3, endAxis),
  ];
  return end.takenAtMm > start.takenAtMm ? [start, end] : [];
}
