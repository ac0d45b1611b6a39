import { addScaled, distance, lengthOf, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type CubicCurve, curveAt, curveLengthMm, joinCurves, straightCurve } from '../../geometry/cubicCurve.ts';
import type { FittedEnd } from '../ends/endPose.ts';
import type { ContactField, RodShape } from '../rod/rodProblem.ts';
import { FINE, type Fineness, isAtRest, type RelaxedSpan, relaxSpan, turnedTo } from './relaxSpan.ts';
import type { Route, Station } from './routeRun.ts';
import { type EndSetting, fittedAt, nearestClockOf, type RunSetting } from './runSetting.ts';
import { grownLengths, shareSlack } from './shareSlack.ts';
import { cutWhereHeld, type ProposedClamp, planSpans, type Span } from './spans.ts';

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
  /** the rods of the spans, from which a finer one may start */
  readonly rods: readonly RodShape[];
  /** how long each of them is, mm */
  readonly rodLengthsMm: readonly number[];
}

/** The rods of a shape of the same hose, to start from. */
export type LainRods = Pick<Shape, 'rods' | 'rodLengthsMm'>;

/**
 * Lets a hose of one live length go along a route until it lies still: every span between holds relaxes as an
 * inextensible elastic rod; the twice continuous spline through its nodes has the span's length to LENGTH_PROOF_MM.
 * liveLengthMm: mouth to mouth. proposed: clamps beside the user's. Answers undefined when a span is shorter than its
 * chord, which is a hose that cannot be fitted. from: a rougher shape of the same hose, to start
 * from, or one of another length: what it is longer or shorter then goes into, or comes out of, the slack of each stretch alike.
 * The rod knows no limit to a turning end: one that turns out of its range is held at the limit it went past and the
 * hose let go again, which is where it comes to rest against that stop.
 */
export function relaxRoute(
  setting: RunSetting,
  route: Route,
  liveLengthMm: number,
  proposed: readonly ProposedClamp[],
  freeClocks: boolean,
  contact: ContactField | undefined,
  watch: Watch,
  fineness: Fineness = FINE,
  from?: LainRods,
): Shape | undefined {
  const shape = relaxFree(setting, route, liveLengthMm, proposed, freeClocks, contact, watch, fineness, from);
  if (shape === undefined) return undefined;
  const a = stoppedAt(setting.a, shape.clockARad);
  const b = stoppedAt(setting.b, shape.clockBRad);
  if (a === setting.a && b === setting.b) return shape;
  const held = {
    ...route,
    clockARad: a.turns ? route.clockARad : a.clockRad,
    clockBRad: b.turns ? route.clockBRad : b.clockRad,
  };
  return relaxRoute({ ...setting, a, b }, held, liveLengthMm, proposed, freeClocks, contact, watch, fineness, shape);
}

/** An end as it came, or standing at the limit of its range that it turned past. */
function stoppedAt(end: EndSetting, clockRad: number): EndSetting {
  const allowed = nearestClockOf(end, clockRad);
  return end.turns && allowed !== clockRad ? { ...end, turns: false, clockRad: allowed } : end;
}

function relaxFree(
  setting: RunSetting,
  route: Route,
  liveLengthMm: number,
  proposed: readonly ProposedClamp[],
  freeClocks: boolean,
  contact: ContactField | undefined,
  watch: Watch,
  fineness: Fineness,
  from: LainRods | undefined,
): Shape | undefined {
  const plan = planSpans(setting, route, proposed, freeClocks);
  const tautMm = plan.spans.reduce((sum, s) => sum + s.tautMm, 0);
  const tails = route.tailMm.a + route.tailMm.b;
  const extras = shareSlack(plan.spans, liveLengthMm - tails - tautMm, setting.minRadiusMm);
  const held = proposed.flatMap((clamp) => (clamp.held === undefined ? [] : [{ ...clamp, held: clamp.held }]));
  const cut = plan.spans.flatMap((span, i) => {
    const within = held.filter((clamp) => clamp.held.span === i).map((clamp) => clamp.held);
    return cutWhereHeld(span, span.tautMm + (extras[i] as number), within);
  });
  const lengthsMm = from === undefined ? cut.map((c) => c.lengthMm) : grownLengths(cut, from.rodLengthsMm);
  const relaxed: SpanInRoute[] = [];
  for (const [i, { span }] of cut.entries()) {
    const lengthMm = lengthsMm[i] as number;
    stopIfCancelled(watch);
    if (span.locked !== undefined) {
      relaxed.push({ span, rod: lockedRod(span.locked), curve: span.locked, lengthMm: span.tautMm });
      continue;
    }
    const known = from?.rods[i];
    const a = known === undefined ? span.a : turnedTo(span.a, known.clockARad);
    const b = known === undefined ? span.b : turnedTo(span.b, known.clockBRad);
    const guess = known?.nodes ?? placesOf(span.guess);
    const free = { a, b, lengthMm, guess, ...(contact === undefined ? {} : { contact }) };
    const shape = relaxSpan(setting, free, watch, fineness);
    if (shape === undefined) return undefined;
    relaxed.push({ span, ...shape });
  }
  const clamps = held.map(({ id, held: { pose } }): Station => ({ id, kind: 'clamp', proposed: true, pose }));
  return assemble(setting, route, [...plan.holds, ...clamps], relaxed);
}

/** A stretch that stays as it lies, as a rod that has come to rest: nothing of it is weighed against other shapes. */
function lockedRod(curve: CubicCurve): RodShape {
  const place = (arcLengthMm: number) => curveAt(curve, arcLengthMm);
  const [start, end] = [place(0), place(curveLengthMm(curve))];
  return {
    outcome: 'converged',
    nodes: Float64Array.from([...start.point, ...end.point]),
    startDirection: start.tangent,
    endDirection: end.tangent,
    clockARad: 0,
    clockBRad: 0,
    energyNmm: 0,
    bendingNmm: 0,
    twistingNmm: 0,
    twistRad: 0,
    torqueNmm: 0,
    endForceN: [0, 0, 0],
    residual: 0,
    closureMm: 0,
    iterations: 0,
    stable: true,
    contacts: [],
    pressedMm: 0,
  };
}

interface SpanInRoute extends RelaxedSpan {
  readonly span: Span;
}

function assemble(setting: RunSetting, route: Route, holds: readonly Station[], spans: readonly SpanInRoute[]): Shape {
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
  const placed = holds
    .map((hold) => ({ hold, atMm: arcLengthNearest(curve, hold.pose.point) }))
    .sort((p, q) => p.atMm - q.atMm);
  return {
    curve,
    a,
    b,
    clockARad,
    clockBRad,
    liveLengthMm: curveLengthMm(curve) - sockets,
    holds: placed.map(({ hold }) => hold),
    holdsAtMm: placed.map(({ atMm }) => atMm),
    tailMm: route.tailMm,
    settled: spans.every(({ rod }) => isAtRest(rod)),
    residual: Math.max(0, ...spans.map((s) => s.rod.residual)),
    energyNmm: spans.reduce((sum, s) => sum + s.rod.energyNmm, 0),
    rods: spans.map(({ rod }) => rod),
    rodLengthsMm: spans.map(({ lengthMm }) => lengthMm),
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
    const d = lengthOf(
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

/** x, y, z of each pose. */
function placesOf(poses: readonly Pose[]): Float64Array {
  const places = new Float64Array(3 * poses.length);
  for (let i = 0; i < poses.length; i++) places.set((poses[i] as Pose).point, 3 * i);
  return places;
}
