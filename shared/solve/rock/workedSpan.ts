import { angleBetween, distance, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { turnDirection } from '../../geometry/rigidMotion.ts';
import type { RelaxedSpan } from '../layRun/relaxSpan.ts';
import type { BodyBay } from './bodyBays.ts';
import type { HeldHose, HeldSpan } from './heldHose.ts';
import { letGo } from './letGo.ts';
import type { Motions } from './movedBay.ts';
import { poseThen } from './slackLeft.ts';

/** One step of the motion turns nothing further than this, rad, and moves nothing further than this many least radii. */
const STEP_RAD = 0.12;
const STEP_RADII = 0.5;
const MOST_STEPS = 12;

const UNITS: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * Lets a stretch go whose two holds have moved against each other: it keeps its length, lets nothing through its holds, and
 * the surface line that was straight along it at rest goes with the holds at both ends, if they wring it. From the shape at rest in small
 * steps of the motion, each from the shape before. motionsAtShare: where the bodies stand at a share of the motion.
 */
export function workedSpan(
  hose: HeldHose,
  span: HeldSpan,
  bays: readonly BodyBay[],
  motionsAtShare: (share: number) => Motions,
  isWrung: boolean,
  watch: Watch,
): RelaxedSpan | undefined {
  const steps = stepsTo(span, motionsAtShare(1), hose.setting.minRadiusMm);
  let last: RelaxedSpan | undefined;
  for (let step = 1; step <= steps; step++) {
    stopIfCancelled(watch);
    const next = lainAt(hose, span, bays, motionsAtShare(step / steps), last, isWrung, watch);
    // A step on the way may miss; only the last one is the answer.
    if (next === undefined && step === steps) return undefined;
    last = next ?? last;
  }
  return last;
}

function lainAt(
  hose: HeldHose,
  span: HeldSpan,
  bays: readonly BodyBay[],
  motions: Motions,
  last: RelaxedSpan | undefined,
  isWrung: boolean,
  watch: Watch,
): RelaxedSpan | undefined {
  return letGo(
    hose,
    span,
    bays,
    motions,
    last?.rod.nodes ?? span.line,
    isWrung
      ? {
          torsionalStiffnessNmm2: hose.torsionalStiffnessNmm2,
          materialA: turnDirection(motions(span.from.body), span.surfaceFrom),
          materialB: turnDirection(motions(span.to.body), span.surfaceTo),
          nearRad: last?.rod.twistRad ?? 0,
        }
      : undefined,
    watch,
  );
}

function stepsTo({ from, to }: HeldSpan, motions: Motions, radiusMm: number): number {
  const ways = [from, to].map((hold) => {
    const turned = Math.max(...motions(hold.body).axes.map((axis, i) => angleBetween(axis, UNITS[i] as Vec3)));
    return turned / STEP_RAD + distance(poseThen(hold, motions).point, hold.pose.point) / (STEP_RADII * radiusMm);
  });
  return Math.min(MOST_STEPS, Math.max(1, Math.ceil(Math.max(...ways))));
}
