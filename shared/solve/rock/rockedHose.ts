import { LIMIT_RELATIVE } from '../../base/tolerances.ts';
import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { motionsAt } from '../../document/lay/motionsAt.ts';
import type { RockExtreme, RockPose } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { type CubicCurve, joinCurves, splineThrough, straightCurve } from '../../geometry/cubicCurve.ts';
import { moveAll, movePoint, type RigidMotion } from '../../geometry/rigidMotion.ts';
import { isAtRest, type RelaxedSpan } from '../layRun/relaxSpan.ts';
import type { RunSetting } from '../layRun/runSetting.ts';
import type { BodyBay } from './bodyBays.ts';
import { chordMm, type HeldHose, type HeldSpan, isWorked } from './heldHose.ts';
import type { Motions } from './movedBay.ts';
import { movedSetting } from './movedSetting.ts';
import { pullOf } from './pullOf.ts';
import { poseThen, slackLeftIn } from './slackLeft.ts';
import { workedSpan } from './workedSpan.ts';

/** A hose at one extreme, not yet measured against its surroundings. */
export interface RockedHose {
  readonly outcome: RockExtreme['outcome'];
  readonly slackLeftMm: number;
  /** what the straight line between two holds is longer than the hose there */
  readonly missingMm?: number;
  /** shoulder to shoulder; none where there is no hose to show */
  readonly curve?: CubicCurve;
  readonly motions: Motions;
  /** the run with its ports and supports where they stand then */
  readonly setting: RunSetting;
  readonly tensionN?: number;
  readonly twistRad?: number;
  readonly torqueNmm?: number;
}

/**
 * Lays a hose at an extreme of the bodies' motion, `movedHose` with ends that wring it. Other hoses are not felt here: they
 * are measured afterwards, as they lie at the same extreme.
 */
export function rockedHose(
  hose: HeldHose,
  project: Project,
  bays: readonly BodyBay[],
  pose: RockPose,
  watch: Watch,
): RockedHose {
  return movedHose(hose, bays, (share) => motionsAt(project, pose, share), true, watch);
}

/**
 * Lays a hose whose holds have moved. Stretches whose holds move against each other are let go anew; others go along as they lie.
 * motionsAtShare: where what holds it stands at a share of the way there. isWrung: whether the holds turn the hose with them,
 * or let it turn in them.
 */
export function movedHose(
  hose: HeldHose,
  bays: readonly BodyBay[],
  motionsAtShare: (share: number) => Motions,
  isWrung: boolean,
  watch: Watch,
): RockedHose {
  const motions = motionsAtShare(1);
  const setting = movedSetting(hose, motions);
  const slackLeftMm = slackLeftIn(hose)(motions);
  const missingMm = Math.max(0, ...hose.spans.filter(isWorked).map((span) => missingIn(span, motions)));
  if (missingMm > 0) return { outcome: 'too-short', slackLeftMm, missingMm, motions, setting };
  const spans = hose.spans.map((span) =>
    isWorked(span)
      ? workedSpan(hose, span, bays, motionsAtShare, isWrung, watch)
      : { curve: carriedCurve(span, motions) },
  );
  if (!spans.every((s) => s !== undefined)) return { outcome: 'unsettled', slackLeftMm, motions, setting };
  const works = spans.filter((s): s is RelaxedSpan => 'rod' in s);
  const settled = works.every(({ rod }) => isAtRest(rod));
  return {
    outcome: slackLeftMm < -TIGHT_MM ? 'tight' : settled ? 'lies' : 'unsettled',
    curve: wholeCurve(
      hose,
      motions,
      spans.map((s) => s.curve),
    ),
    slackLeftMm,
    motions,
    setting,
    ...strainOf(works, setting.weightNPerMm),
  };
}

/** mm. Less than this missing is rounding of lengths, not a tight hose. */
const TIGHT_MM = 0.01;

function missingIn(span: HeldSpan, motions: Motions): number {
  const chord = chordMm(poseThen(span.from, motions), poseThen(span.to, motions));
  return chord > span.lengthMm * (1 + LIMIT_RELATIVE) ? chord - span.lengthMm : 0;
}

export function carriedCurve(span: HeldSpan, motions: Motions): CubicCurve {
  const stepMm = span.lengthMm / (span.line.length / 3 - 1);
  const line = moveAll(motions(span.from.body), span.line);
  return splineThrough(line, stepMm, poseThen(span.from, motions).direction, poseThen(span.to, motions).direction);
}

function wholeCurve(hose: HeldHose, motions: Motions, spans: readonly CubicCurve[]): CubicCurve {
  const { a, b } = hose.taken.lay.ends;
  const first = hose.spans[0] as HeldSpan;
  const last = hose.spans[hose.spans.length - 1] as HeldSpan;
  const straight = (motion: RigidMotion, from: Vec3, to: Vec3): CubicCurve[] =>
    distance(from, to) > 0 ? [straightCurve(movePoint(motion, from), movePoint(motion, to))] : [];
  return joinCurves([
    ...straight(motions(first.from.body), a.shoulderPoint, first.from.pose.point),
    ...spans,
    ...straight(motions(last.to.body), last.to.pose.point, b.shoulderPoint),
  ]);
}

/** Greatest pull and twist of the stretches that were let go; nothing where none was. */
export function strainOf(
  works: readonly RelaxedSpan[],
  weightNPerMm: number,
): Pick<RockedHose, 'tensionN' | 'twistRad' | 'torqueNmm'> {
  if (works.length === 0) return {};
  const wrung = works.reduce((a, b) => (Math.abs(b.rod.twistRad) > Math.abs(a.rod.twistRad) ? b : a)).rod;
  return {
    tensionN: Math.max(...works.map(({ rod, lengthMm }) => pullOf(rod, weightNPerMm * lengthMm))),
    twistRad: wrung.twistRad,
    torqueNmm: wrung.torqueNmm,
  };
}
