import { seededRandom } from '../../base/random.ts';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { degreesApart, radiansToDegrees } from '../../base/units.ts';
import { addScaled, angleBetween, lengthOf, unit, type Vec3 } from '../../base/vec3.ts';
import type { Clock } from '../../document/lay/schema.ts';
import type { Straightened } from '../../document/straightened/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { smoothingSpline } from '../../geometry/smoothingSpline.ts';
import { clockBetween } from '../ends/clock.ts';
import { backTurns } from './backTurns.ts';
import { tightestBend } from './tightestBend.ts';

/** A rod as it was digitised. Points and directions in one right-handed frame, mm. */
export interface BentRod {
  /** along the rod's axis from END A to END B */
  readonly points: readonly Vec3[];
  /** the way the outlet of END A points: from its bend to its seat; absent = END A is straight */
  readonly outletA?: Vec3;
  readonly outletB?: Vec3;
  /** C of each end, taken off where the rod was measured from seat to seat; 0 = it was measured shoulder to shoulder */
  readonly cutOffMm: { readonly a: number; readonly b: number };
  /** the clock's tolerance for an assembly of so many mm overall, deg */
  toleranceDeg(overallLengthMm: number): number;
}

/** deg. An outlet nearer to the hose's own axis than this gives no clock: a protractor on it reads anything. */
const LEAST_OUTLET_DEG = 10;
/** Rods with the points' own scatter made up to see what it does to length and clock. */
const REPEATS = 24;
const SEED = 1;
/** Standard deviations that hold about 95 % of a normal scatter. */
const BAND = 2;
/** Leaving out every second point makes the spacing's error so many times as large, at the least. */
const HALVED_ERROR = 4;

/**
 * What a bent rod says of the hose to be made: its length along the axis and the clock between its outlets, with the
 * frame carried along the rod without twist. Method: smoothing spline along the points (scatter by cross-validation),
 * exact arc length, double reflection. The errors given are those of the points: rods made up with their scatter, and
 * the rod from every second point. A rod with C wrong, or taken off the car bent, is not known to it. Problems: outlets along the hose, C
 * longer than the rod.
 */
export function straighten(rod: BentRod): Result<Straightened> {
  const { curve, scatterMm, lambda } = smoothingSpline(rod.points);
  const problems = problemsOf(rod, curve);
  if (problems.length > 0) return bad(problems);
  const pathLengthMm = curveLengthMm(curve);
  const cutLengthMm = pathLengthMm - rod.cutOffMm.a - rod.cutOffMm.b;
  const deg = clockAlong(rod, curve);
  const others = [...repeated(rod.points, curve, scatterMm, lambda), everySecond(rod.points)];
  const lengthErrorMm = errorOf(others.map((other) => curveLengthMm(other) - pathLengthMm));
  const clock: Clock =
    deg === undefined
      ? { kind: 'free', reason: freeReason(rod) }
      : { kind: 'angle', deg, toleranceDeg: rod.toleranceDeg(pathLengthMm) };
  return good({
    pathLengthMm,
    cutLengthMm,
    cutOffMm: { ...rod.cutOffMm },
    lengthErrorMm,
    clock,
    ...(deg === undefined
      ? {}
      : { clockErrorDeg: errorOf(others.map((other) => degreesApart(clockAlong(rod, other) ?? deg, deg))) }),
    tightest: tightestBend(curve, pathLengthMm / (rod.points.length - 1)),
    scatterMm,
    points: rod.points.length,
    notes: backTurns(rod.points),
  });
}

function problemsOf({ outletA, outletB, cutOffMm }: BentRod, curve: CubicCurve): Problem[] {
  const totalMm = curveLengthMm(curve);
  return [
    ...outletProblems('outlet A', outletA, curveAt(curve, 0).tangent),
    ...outletProblems('outlet B', outletB, curveAt(curve, totalMm).tangent),
    ...(cutOffMm.a + cutOffMm.b >= totalMm
      ? [{ path: 'cut-off', message: `C of both ends takes more than the rod has, ${totalMm.toFixed(1)} mm` }]
      : []),
  ];
}

function outletProblems(path: string, outlet: Vec3 | undefined, tangent: Vec3): Problem[] {
  if (outlet === undefined) return [];
  const deg = radiansToDegrees(angleBetween(unit(outlet), tangent));
  if (Math.min(deg, 180 - deg) >= LEAST_OUTLET_DEG) return [];
  return [
    {
      path,
      message: `lies within ${LEAST_OUTLET_DEG} degrees of the hose's own axis, so it gives no clock: leave it out for a straight end, or look at it again`,
    },
  ];
}

function clockAlong({ outletA, outletB }: BentRod, curve: CubicCurve): number | undefined {
  return outletA === undefined || outletB === undefined ? undefined : clockBetween(curve, outletA, outletB);
}

function freeReason({ outletA, outletB }: BentRod): 'a-straight' | 'b-straight' | 'both-straight' {
  if (outletA !== undefined) return 'b-straight';
  return outletB === undefined ? 'both-straight' : 'a-straight';
}

/** The same rod measured again and again, each point off its place by the scatter. */
function repeated(points: readonly Vec3[], curve: CubicCurve, scatterMm: number, lambda: number): CubicCurve[] {
  if (scatterMm === 0) return [];
  const random = seededRandom(SEED);
  const off = (): number => scatterMm * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const lengths = chordSums(points);
  const stretch = curveLengthMm(curve) / (lengths[lengths.length - 1] as number);
  const places = lengths.map((s) => curveAt(curve, s * stretch).point);
  return Array.from(
    { length: REPEATS },
    () =>
      smoothingSpline(
        places.map((p) => addScaled(p, [off(), off(), off()], 1)),
        lambda,
      ).curve,
  );
}

function chordSums(points: readonly Vec3[]): number[] {
  let sum = 0;
  return points.map((p, i) => {
    const before = points[i - 1] ?? p;
    sum += lengthOf(p[0] - before[0], p[1] - before[1], p[2] - before[2]);
    return sum;
  });
}

function everySecond(points: readonly Vec3[]): CubicCurve {
  return smoothingSpline(points.filter((_, i) => i % 2 === 0 || i === points.length - 1)).curve;
}

/** From what the made-up rods differ by, the last of them the one from every second point. */
function errorOf(differences: readonly number[]): number {
  const scattered = differences.slice(0, -1);
  const sum = scattered.reduce((total, d) => total + d * d, 0);
  const spread = scattered.length === 0 ? 0 : BAND * Math.sqrt(sum / scattered.length);
  return Math.max(spread, Math.abs(differences[differences.length - 1] ?? 0) / HALVED_ERROR);
}
