import { addScaled, distance, length, triple, type Vec3 } from '../../base/vec3.ts';
import type { HandChange, HandHold } from '../../document/hand/handChange.ts';
import type { LaySupport } from '../../document/lay/schema.ts';
import {
  type CubicCurve,
  curveAt,
  curveFromCoefficients,
  curveLengthMm,
  straightCurve,
} from '../../geometry/cubicCurve.ts';
import { nearestArcMm } from '../../geometry/nearestArc.ts';
import { fittedAt, type RunSetting } from '../layRun/runSetting.ts';
import { HAND } from './anchors.ts';
import type { HandLine } from './handShapeOf.ts';
import type { LaidStretches, StandingEnds, Stretch } from './spansOf.ts';
import type { TakenLay } from './takenLay.ts';

/** The stretches put together from shoulder to shoulder, with everything that has hold of them at its place. */
export function lineOf(
  setting: RunSetting,
  taken: TakenLay,
  change: HandChange,
  { stretches, tooShortMm }: LaidStretches,
  ends: StandingEnds,
): HandLine {
  const tailMm = taken.lay.straightTailMm;
  const a = fittedAt(setting.a, ends.a);
  const b = fittedAt(setting.b, ends.b);
  const head = straightFrom(a.shoulderPoint, addScaled(a.mouthPoint, a.hoseAxis, tailMm.a));
  const foot = straightFrom(addScaled(b.mouthPoint, b.hoseAxis, tailMm.b), b.shoulderPoint);
  const curve = joined([...head, ...stretches.map((s) => s.curve), ...foot]);
  const starts: number[] = [head.reduce((sum, c) => sum + curveLengthMm(c), 0)];
  for (const s of stretches) starts.push((starts[starts.length - 1] as number) + curveLengthMm(s.curve));
  return {
    curve,
    a,
    b,
    clockARad: ends.a,
    clockBRad: ends.b,
    supports: supportsOf(setting, change, taken, curve, stretches, starts),
    tailMm,
    settled: stretches.every((s) => s.atRest),
    ...holdOf(change, curve, stretches, starts),
    ...(tooShortMm > REACHES_MM ? { refused: shortReason(setting, tooShortMm) } : {}),
  };
}

/** mm. A cut hose that lacks less than this reaches. */
const REACHES_MM = 0.05;

function shortReason(setting: RunSetting, tooShortMm: number): string {
  const one = (mm: number): string => (Math.round(mm * 10) / 10).toString();
  return `a hose cut to ${one(setting.cutLengthMm ?? 0)} mm is too short by ${one(tooShortMm)} mm here`;
}

/** Curves one after the other. A hose that found no shape may not reach its end: it is shown so, with its reason. */
function joined(curves: readonly CubicCurve[]): CubicCurve {
  const all = new Float64Array(curves.reduce((n, c) => n + c.coefficients.length, 0));
  let at = 0;
  for (const { coefficients } of curves) {
    all.set(coefficients, at);
    at += coefficients.length;
  }
  return curveFromCoefficients(all);
}

function straightFrom(a: Vec3, b: Vec3): CubicCurve[] {
  return distance(a, b) > 0 ? [straightCurve(a, b)] : [];
}

function supportsOf(
  setting: RunSetting,
  change: HandChange,
  taken: TakenLay,
  curve: CubicCurve,
  stretches: readonly Stretch[],
  starts: readonly number[],
): LaySupport[] {
  const held = stretches.flatMap(({ from }, i): LaySupport[] => {
    if (from.kind !== 'clamp' && from.kind !== 'pass-through') return [];
    const at = { arcLengthMm: starts[i] as number, point: triple(from.now.point) };
    return [{ id: from.id, kind: from.kind, proposed: from.proposed, at, axis: triple(from.now.direction) }];
  });
  const guides = (change.supports ?? setting.supports).filter((s) => s.kind === 'waypoint');
  if (guides.length === 0) return held;
  const steps = taken.lay.centreline.points.length;
  const total = curveLengthMm(curve);
  const arcs = Array.from({ length: steps }, (_, i) => (total * i) / (steps - 1));
  const points = arcs.map((s) => curveAt(curve, s).point);
  const guided = guides.map((g): LaySupport => {
    const arcLengthMm = nearestArcMm(points, arcs, g.point);
    const { point, tangent } = curveAt(curve, arcLengthMm);
    const at = { arcLengthMm, point: triple(point) };
    return { id: g.id, kind: 'waypoint', proposed: false, at, axis: triple(tangent) };
  });
  return [...held, ...guided];
}

/** Where the hand has hold: at its pull, or where it tries in vain because the hose is held there anyway. */
function holdOf(
  { pull }: HandChange,
  curve: CubicCurve,
  stretches: readonly Stretch[],
  starts: readonly number[],
): { hold?: HandHold } {
  if (pull === undefined) return {};
  const found = stretches.findIndex((s) => s.pulls.some((p) => p.id === HAND));
  const stretch = stretches[found];
  const number = stretch?.pulls.findIndex((p) => p.id === HAND) ?? -1;
  const arcLengthMm =
    stretch === undefined
      ? pull.arcLengthMm
      : (starts[found] as number) + (stretch.fractions[number] as number) * curveLengthMm(stretch.curve);
  const { point, tangent } = curveAt(curve, arcLengthMm);
  const force = stretch?.laid?.holds[number]?.forceN;
  return {
    hold: {
      arcLengthMm,
      point: triple(point),
      axis: triple(tangent),
      offMm: distance(point, pull.to),
      forceN: force === undefined ? 0 : length(force),
    },
  };
}
