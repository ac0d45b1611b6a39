import { addScaled, distance, scale, type Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type CubicCurve, curveAt, curveLengthMm, joinCurves, straightCurve } from '../../geometry/cubicCurve.ts';
import { type Frame, frameMotion } from '../../geometry/frameMotion.ts';
import { movePoint } from '../../geometry/rigidMotion.ts';
import { type FittedEnd, fitEnd } from '../ends/endPose.ts';
import { isAtRest, type RelaxedSpan, relaxSpan } from '../layRun/relaxSpan.ts';
import { type EndSetting, heldPlaces, nearestClockOf, type RunSetting, rodEnd } from '../layRun/runSetting.ts';
import type { BodyBay } from '../rock/bodyBays.ts';
import type { HeldHose, HeldSpan } from '../rock/heldHose.ts';
import { type Motions, movedContact } from '../rock/movedBay.ts';
import { carriedCurve, type RockedHose, strainOf } from '../rock/rockedHose.ts';
import { poseThen, slackLeftIn } from '../rock/slackLeft.ts';
import { materialsOfClock } from '../rod/materialsOfClock.ts';
import type { RodEnd, RodTwist } from '../rod/rodProblem.ts';

/** Own clocks of both ends of a hose, rad. */
export interface OwnClocks {
  readonly a: number;
  readonly b: number;
}

/**
 * A hose fitted anew between ports that have moved, its swivel ends turned to where it comes to rest. The stretches beyond
 * its first and its last clamp stay as they lie, unless all are let go. setting: the run with its ports where they stand then. bodies: those of
 * the ends that move or turn; an end that does neither is held by another. A hose of one stretch
 * between two angled ends keeps the clock it was made with; one with clamps in between turns in them as it is fitted.
 */
export function refittedHose(
  hose: HeldHose,
  bays: readonly BodyBay[],
  motions: Motions,
  bodies: Readonly<Record<'a' | 'b', string>>,
  setting: RunSetting,
  was: OwnClocks,
  watch: Watch,
  letsGoAll = false,
): { readonly rocked: RockedHose; readonly clocks: OwnClocks } | undefined {
  const clocks = { ...was };
  const relaxed: (RelaxedSpan | undefined)[] = hose.spans.map((span, i) => {
    const sides = { a: i === 0, b: i === hose.spans.length - 1 };
    if (!sides.a && !sides.b && !letsGoAll) return undefined;
    const lain = fitted(hose, span, bays, motions, setting, clocks, sides, watch);
    if (lain !== undefined && sides.a) clocks.a = lain.clocks.a;
    if (lain !== undefined && sides.b) clocks.b = lain.clocks.b;
    return lain?.span;
  });
  const isLetGo = (i: number): boolean => letsGoAll || i === 0 || i === relaxed.length - 1;
  if (relaxed.some((r, i) => r === undefined && isLetGo(i))) return undefined;
  const works = relaxed.filter((r) => r !== undefined);
  const curves = hose.spans.map((span, i) => relaxed[i]?.curve ?? carriedCurve(span, motions));
  const ends = {
    a: fitEnd(setting.a.port, setting.a.end, clocks.a),
    b: fitEnd(setting.b.port, setting.b.end, clocks.b),
  };
  // The slack is that between the holds as they stand with the swivels turned.
  const { a, b } = hose.taken.lay.ends;
  const turned: Motions = (body) =>
    body === bodies.a
      ? frameMotion(frameOf(a), frameOf(ends.a))
      : body === bodies.b
        ? frameMotion(frameOf(b), frameOf(ends.b))
        : motions(body);
  const slackLeftMm = slackLeftIn(hose)(turned);
  return {
    clocks,
    rocked: {
      outcome: works.every(({ rod }) => isAtRest(rod)) ? (slackLeftMm < 0 ? 'tight' : 'lies') : 'unsettled',
      slackLeftMm,
      curve: betweenShoulders(ends.a.shoulderPoint, curves, ends.b.shoulderPoint),
      motions,
      setting,
      ...strainOf(works, setting.weightNPerMm),
    },
  };
}

function frameOf({ shoulderPoint, hoseAxis, up }: Pick<FittedEnd, 'shoulderPoint' | 'hoseAxis' | 'up'>): Frame {
  return { seatPoint: shoulderPoint, axis: hoseAxis, up };
}

/** One stretch between an end or two that may turn, let go; an end that leaves its range is held at its limit and it is let go again. */
function fitted(
  hose: HeldHose,
  span: HeldSpan,
  bays: readonly BodyBay[],
  motions: Motions,
  setting: RunSetting,
  clocks: OwnClocks,
  sides: { readonly a: boolean; readonly b: boolean },
  watch: Watch,
): { readonly span: RelaxedSpan; readonly clocks: OwnClocks } | undefined {
  const tails = hose.taken.lay.straightTailMm;
  const held = (hold: HeldSpan['from']): RodEnd => ({ kind: 'held', ...poseThen(hold, motions) });
  const a = sides.a ? rodEnd(setting.a, 'a', tails.a, clocks.a, true) : held(span.from);
  const b = sides.b ? rodEnd(setting.b, 'b', tails.b, clocks.b, true) : held(span.to);
  const twist = sides.a && sides.b ? twistOf(hose, setting, clocks) : undefined;
  const lain = relaxSpan(
    setting,
    {
      a,
      b,
      lengthMm: span.lengthMm,
      guess: guessOf(span, motions),
      contact: movedContact(bays, motions, setting.outsideRadiusMm, heldPlaces(setting)),
      ...(twist === undefined ? {} : { twist }),
    },
    watch,
  );
  if (lain === undefined) return undefined;
  const turned = {
    a: a.kind === 'turning' ? lain.rod.clockARad : clocks.a,
    b: b.kind === 'turning' ? lain.rod.clockBRad : clocks.b,
  };
  const stop = (end: EndSetting, clockRad: number): EndSetting => {
    const allowed = nearestClockOf(end, clockRad);
    return allowed === clockRad ? end : { ...end, turns: false, clockRad: allowed };
  };
  const stopped = { ...setting, a: stop(setting.a, turned.a), b: stop(setting.b, turned.b) };
  if (stopped.a === setting.a && stopped.b === setting.b) return { span: lain, clocks: turned };
  const at = {
    a: stopped.a === setting.a ? clocks.a : stopped.a.clockRad,
    b: stopped.b === setting.b ? clocks.b : stopped.b.clockRad,
  };
  return fitted(hose, span, bays, motions, stopped, at, sides, watch);
}

/** Stretches that follow each other, with the straight hose in sockets and tails before and behind them. */
function betweenShoulders(a: Vec3, curves: readonly CubicCurve[], b: Vec3): CubicCurve {
  const start = curveAt(curves[0] as CubicCurve, 0).point;
  const last = curves[curves.length - 1] as CubicCurve;
  const end = curveAt(last, curveLengthMm(last)).point;
  const straight = (from: Vec3, to: Vec3): CubicCurve[] => (distance(from, to) > 0 ? [straightCurve(from, to)] : []);
  return joinCurves([...straight(a, start), ...curves, ...straight(end, b)]);
}

/** The line at rest, moved along with its two holds in proportion. */
function guessOf({ line, from, to }: HeldSpan, motions: Motions): Float64Array {
  const last = line.length / 3 - 1;
  const out = new Float64Array(line.length);
  for (let i = 0; i <= last; i++) {
    const p = [line[3 * i] as number, line[3 * i + 1] as number, line[3 * i + 2] as number] as const;
    const [q, r] = [movePoint(motions(from.body), p), movePoint(motions(to.body), p)];
    out.set(addScaled(scale(q, 1 - i / last), r, i / last), 3 * i);
  }
  return out;
}

/** What of its clock a hose between two angled ends keeps; nothing where an end is straight and turns on it freely. */
function twistOf(
  { taken, torsionalStiffnessNmm2 }: HeldHose,
  setting: RunSetting,
  clocks: OwnClocks,
): RodTwist | undefined {
  const { clock } = taken.lay;
  if (clock.kind === 'free') return undefined;
  const standing = (end: EndSetting, clockRad: number) => fitEnd(end.port, end.end, end.turns ? 0 : clockRad);
  const a = standing(setting.a, clocks.a);
  const b = standing(setting.b, clocks.b);
  return {
    torsionalStiffnessNmm2,
    ...materialsOfClock(a.up, b.up, a.hoseAxis, scale(b.hoseAxis, -1), clock.deg),
    nearRad: 0,
  };
}
