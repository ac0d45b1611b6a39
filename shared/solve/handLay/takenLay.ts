import type { Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { type CubicCurve, curveAt, splineThrough } from '../../geometry/cubicCurve.ts';

/** A lay as the hand took it, as a curve to read places from. */
export interface TakenLay {
  readonly lay: Lay;
  /** through the points of the report, so within a hundredth of a millimetre of the curve they were taken from */
  readonly curve: CubicCurve;
}

/** The report's centreline, which has equal steps, as a curve again. */
export function takenLay(lay: Lay): TakenLay {
  const { points, arcLengthMm } = lay.centreline;
  const stepMm = (arcLengthMm[arcLengthMm.length - 1] as number) / (points.length - 1);
  const { a, b } = lay.ends;
  const into: Vec3 = [-b.hoseAxis[0], -b.hoseAxis[1], -b.hoseAxis[2]];
  return { lay, curve: splineThrough(Float64Array.from(points.flat()), stepMm, a.hoseAxis, into) };
}

/** Place and direction of the hose at an arc length from shoulder A, mm. */
export function poseAt({ curve }: TakenLay, arcMm: number): Pose {
  const { point, tangent } = curveAt(curve, arcMm);
  return { point, direction: tangent };
}

/** x, y, z of places of the lay from one arc length to another, both among them, at most `stepMm` apart. */
export function guessBetween(taken: TakenLay, fromMm: number, toMm: number, stepMm: number): Float64Array {
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / stepMm));
  const out = new Float64Array(3 * steps + 3);
  for (let i = 0; i <= steps; i++) out.set(curveAt(taken.curve, fromMm + ((toMm - fromMm) * i) / steps).point, 3 * i);
  return out;
}
