import { CLEARANCE_PROOF_MM, RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { Vec3 } from '../../base/vec3.ts';
import { curveLengthMm } from '../../geometry/cubicCurve.ts';
import { leastAlong, leastRadius } from '../../geometry/curveLimits.ts';
import type { RunField } from '../bay/runField.ts';
import type { Shape } from './relaxRoute.ts';
import type { RunSetting } from './runSetting.ts';

/** How a relaxed hose stands against its radius and everything it must keep from. */
export interface Judgement {
  readonly radiusMm: number;
  readonly radiusAtMm: number;
  /** least margin of the field along the live hose, mm; negative = too near */
  readonly marginMm: number;
  readonly marginAtMm: number;
  readonly marginPoint: Vec3;
  /** 0 = meets everything; else how badly it fails, comparable between shapes of one run */
  readonly fault: number;
}

/** Relative. How finely radii are compared; a small part of what counts as meeting a limit. */
const JUDGE_RADIUS_GAP = 0.0002;

/** Measures a shape well enough to choose between shapes. Radius by its proven bound, margin by its proof to CLEARANCE_PROOF_MM. */
export function judgeShape(setting: RunSetting, shape: Shape, field: RunField): Judgement {
  const radius = leastRadius(shape.curve, JUDGE_RADIUS_GAP);
  const margin = leastAlong(
    shape.curve,
    setting.a.end.shoulderToMouthMm,
    curveLengthMm(shape.curve) - setting.b.end.shoulderToMouthMm,
    (p, upTo) => field.marginMm(p[0], p[1], p[2], upTo),
    field.lipschitz,
    CLEARANCE_PROOF_MM,
  );
  const short = Math.max(0, 1 - radius.provenAtLeast / (setting.minRadiusMm * (1 - RADIUS_RELATIVE)));
  const near = Math.max(0, -margin.provenAtLeast);
  return {
    radiusMm: radius.found,
    radiusAtMm: radius.arcLengthMm,
    marginMm: margin.found,
    marginAtMm: margin.arcLengthMm,
    marginPoint: margin.point,
    fault: near + short * setting.minRadiusMm + (shape.settled ? 0 : UNSETTLED_FAULT),
  };
}

/** A shape that did not come to rest is worse than any that did. */
const UNSETTLED_FAULT = 1000;
