import { AT_REST_RESIDUAL, ROD_CLOSURE_MM, SAME_POINT_MM } from '../../base/tolerances.ts';
import { addScaled, DOWN, distance, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type CubicCurve, curveLengthMm, joinCurves, splineThrough, straightCurve } from '../../geometry/cubicCurve.ts';
import type { FittedEnd } from '../ends/endPose.ts';
import { relaxRod } from '../rod/relaxRod.ts';
import type { ContactField, RodShape } from '../rod/rodProblem.ts';
import type { Route, Station } from './routeRun.ts';
import { fittedAt, type RunSetting } from './runSetting.ts';
import { type ProposedClamp, planSpans, type Span, shareSlack } from './spans.ts';

/** A hose lying still: its centreline from shoulder to shoulder and what it took to find it. */
export interface Shape {
  readonly curve: CubicCurve;
  readonly a: FittedEnd;
  readonly b: FittedEnd;
  readonly clockARad: number;
  readonly clockBRad: number;
  readonly liveLengthMm: number;
  readonly holds: readonly Station[];
  /** arc length of each hold from shoulder A, mm */
  readonly holdsAtMm: readonly number[];
  readonly tailMm: { readonly a: number; readonly b: number };
  readonly settled: boolean;
  readonly residual: number;
  readonly energyNmm: number;
  readonly contactForceN: number;
}

/**
 * Edge length of the relaxed rod over the hose's least radius. The curvature at a held end comes out too large by about
 * half the square of edge over radius (measured on a quarter circle), so this keeps it under RADIUS_RELATIVE.
 */
const EDGE_OVER_RADIUS = 0.03;
const LEAST_EDGES = 24;
const MOST_EDGES = 600;
/** Times the rod is shortened so that the spline through it, not the chords, has the wanted length. Each gains two digits. */
const LENGTH_CORRECTIONS = 3;

/**
 * Lets a hose of one live length go along a route until it lies still: every span between holds relaxes as an
 * inextensible elastic rod; the twice continuous spline through its nodes has the span's length to LENGTH_PROOF_MM.
 * liveLengthMm: mouth to mouth. proposed: clamps beside the user's. Answers undefined when a span is shorter than its
 * chord, which is a hose that cannot be fitted.
 */
export function relaxRoute(
  setting: RunSetting,
  route: Route,
  liveLengthMm: number,
  proposed: readonly ProposedClamp[],
  freeClocks: boolean,
  contact: ContactField | undefined,
  watch: Watch,
): Shape | undefined {
  const plan = planSpans(setting, route, proposed, freeClocks);
  const tautMm = plan.spans.reduce((sum, s) => sum + s.tautMm, 0);
  const tails = route.tailMm.a + route.tailMm.b;
  const extras = shareSlack(plan.spans, liveLengthMm - tails - tautMm);
  const relaxed: RelaxedSpan[] = [];
  for (const [i, span] of plan.spans.entries()) {
    stopIfCancelled(watch);
    const shape = relaxSpan(setting, span, span.tautMm + (extras[i] as number), contact, watch);
    if (shape === undefined) return undefined;
    relaxed.push(shape);
  }
  return assemble(setting, route, plan.holds, relaxed);
}

interface RelaxedSpan {
  readonly span: Span;
  readonly rod: RodShape;
  readonly curve: CubicCurve;
}

function relaxSpan(
  setting: RunSetting,
  span: Span,
  lengthMm: number,
  contact: ContactField | undefined,
  watch: Watch,
): RelaxedSpan | undefined {
  const edges = Math.min(
    MOST_EDGES,
    Math.max(LEAST_EDGES, Math.round(lengthMm / (EDGE_OVER_RADIUS * setting.minRadiusMm))),
  );
  const reach = lengthMm / edges;
  let rodLengthMm = lengthMm;
  let guess: Float64Array = Float64Array.from(span.guess.flatMap((p) => [...p.point]));
  let best: RelaxedSpan | undefined;
  for (let round = 0; round <= LENGTH_CORRECTIONS; round++) {
    const rod = relaxRod(
      {
        edges,
        lengthMm: rodLengthMm,
        a: best === undefined ? span.a : turnedTo(span.a, best.rod.clockARad),
        b: best === undefined ? span.b : turnedTo(span.b, best.rod.clockBRad),
        stiffnessNmm2: setting.stiffnessNmm2,
        weightNPerMm: setting.weightNPerMm,
        down: DOWN,
        ...(contact === undefined ? {} : { contact }),
        guess,
      },
      watch,
    );
    // A rod that did not close does not reach its end: there is no hose to show.
    if (rod.outcome === 'too-short' || rod.closureMm > CLOSED_MM) return best;
    const curve = splineThrough(rod.nodes, reach, rod.startDirection, rod.endDirection);
    best = { span, rod, curve };
    const off = lengthMm - curveLengthMm(curve);
    if (Math.abs(off) < LENGTH_PROOF_MM) break;
    rodLengthMm += off;
    guess = rod.nodes;
  }
  return best;
}

function isAtRest(rod: RodShape): boolean {
  const still = rod.outcome === 'converged' ? rod.stable : rod.residual <= AT_REST_RESIDUAL;
  return still && rod.pressedMm <= PRESSED_MM;
}

/** mm. A hose pressed into something deeper than this has no room there: the whole of the contact's own softness is less. */
const PRESSED_MM = 0.2;

/** mm. A rod whose ends miss their places by more than this has no shape; well under SAME_POINT_MM, so that spans join. */
const CLOSED_MM = SAME_POINT_MM / 2;

/** mm. How near the spline's length comes to the wanted length: far under what a saw can cut. */
const LENGTH_PROOF_MM = 100 * ROD_CLOSURE_MM;

function turnedTo<E extends Span['a']>(end: E, clockRad: number): E {
  return end.kind === 'turning' ? { ...end, clockRad } : end;
}

function assemble(setting: RunSetting, route: Route, holds: readonly Station[], spans: readonly RelaxedSpan[]): Shape {
  const first = spans[0];
  const last = spans[spans.length - 1];
  // A held end stands at the route's clock; only one that was free to turn has come to another.
  const clockARad = first?.span.a.kind === 'turning' ? first.rod.clockARad : route.clockARad;
  const clockBRad = last?.span.b.kind === 'turning' ? last.rod.clockBRad : route.clockBRad;
  const a = fittedAt(setting.a, clockARad);
  const b = fittedAt(setting.b, clockBRad);
  const head = straightFrom(a.shoulderPoint, addScaled(a.mouthPoint, a.hoseAxis, route.tailMm.a));
  const foot = straightFrom(addScaled(b.mouthPoint, b.hoseAxis, route.tailMm.b), b.shoulderPoint);
  const curve = joinCurves([...head, ...spans.map((s) => s.curve), ...foot]);
  const sockets = setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm;
  return {
    curve,
    a,
    b,
    clockARad,
    clockBRad,
    liveLengthMm: curveLengthMm(curve) - sockets,
    holds,
    holdsAtMm: holds.map((h) => arcLengthNearest(curve, h.pose.point)),
    tailMm: route.tailMm,
    settled: spans.every(({ rod }) => isAtRest(rod)),
    residual: Math.max(0, ...spans.map((s) => s.rod.residual)),
    energyNmm: spans.reduce((sum, s) => sum + s.rod.energyNmm, 0),
    contactForceN: Math.max(0, ...spans.flatMap((s) => s.rod.contacts.map((c) => c.forceN))),
  };
}

function straightFrom(a: Vec3, b: Vec3): CubicCurve[] {
  return distance(a, b) > 0 ? [straightCurve(a, b)] : [];
}

/** Holds stand at the ends of pieces, so the nearest piece end is exact. */
function arcLengthNearest(curve: CubicCurve, point: Vec3): number {
  let best = Infinity;
  let at = 0;
  for (let i = 0; i < curve.coefficients.length / 12; i++) {
    const c = curve.coefficients;
    const d = Math.hypot(
      (c[12 * i] as number) - point[0],
      (c[12 * i + 1] as number) - point[1],
      (c[12 * i + 2] as number) - point[2],
    );
    if (d < best) {
      best = d;
      at = curve.arcLengthMm[i] as number;
    }
  }
  return at;
}
