import { distance, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lock } from '../../document/project/schema.ts';
import { type CubicCurve, splineThrough } from '../../geometry/cubicCurve.ts';

/** A locked stretch as a curve: the spline through its points, which are taken to stand at even distances. */
export function lockCurve({ points, startAxis, endAxis }: Lock): CubicCurve {
  let chordsMm = 0;
  for (let i = 0; i + 1 < points.length; i++) chordsMm += distance(points[i] as Vec3, points[i + 1] as Vec3);
  return splineThrough(
    Float64Array.from(points.flat()),
    chordsMm / (points.length - 1),
    unit(startAxis),
    unit(endAxis),
  );
}
