import { distance, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lock } from '../../document/project/schema.ts';
import type { ArcLinePath } from '../../geometry/arcLinePath.ts';
import { type CubicCurve, curveAt, curveLengthMm, splineAlong } from '../../geometry/cubicCurve.ts';
import { pathThroughPoses } from '../../geometry/pathThroughPoses.ts';

/** mm. Spacing of the poses through which a locked stretch is brought into arcs, for what reads routes. */
const POSE_STEP_MM = 5;

/** A stretch of hose that stays as it lies: its curve, and the same as arcs. */
export interface LockedStretch {
  readonly id: string;
  readonly curve: CubicCurve;
  readonly path: ArcLinePath;
}

/** A lock of the project as curves. The spline through its points, however they are spaced, with its own end directions. */
export function lockedStretch({ id, points, startAxis, endAxis }: Lock): LockedStretch {
  const [start, end] = [unit(startAxis), unit(endAxis)];
  const apart = points.filter((p, i) => i === 0 || distance(p, points[i - 1] as Vec3) > 0);
  const curve = splineAlong(Float64Array.from(apart.flat()), start, end);
  const total = curveLengthMm(curve);
  const steps = Math.max(1, Math.ceil(total / POSE_STEP_MM));
  const poses = Array.from({ length: steps + 1 }, (_, i) => {
    const { point, tangent } = curveAt(curve, (total * i) / steps);
    return { point, direction: i === 0 ? start : i === steps ? end : tangent };
  });
  return { id, curve, path: pathThroughPoses(poses) };
}
