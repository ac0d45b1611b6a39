import { CLEARANCE_PROOF_MM, RADIUS_RELATIVE } from '../../base/tolerances.ts';
import { dot, type Vec3 } from '../../base/vec3.ts';
import { curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { leastAlong, leastRadius } from '../../geometry/curveLimits.ts';
import type { RunField } from '../bay/runField.ts';
import type { Fall } from '../search/fall.ts';
import type { Shape } from './relaxRoute.ts';
import { type EndSetting, endMarginMm, type RunSetting } from './runSetting.ts';

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
  const ends = Math.min(
    turnedEndMargin(setting.a, shape.clockARad, field),
    turnedEndMargin(setting.b, shape.clockBRad, field),
  );
  const near = Math.max(0, -margin.provenAtLeast, -ends);
  const climb = setting.fall === undefined ? 0 : climbFault(setting.fall, shape);
  return {
    radiusMm: radius.found,
    radiusAtMm: radius.arcLengthMm,
    marginMm: margin.found,
    marginAtMm: margin.arcLengthMm,
    marginPoint: margin.point,
    fault: near + short * setting.minRadiusMm + climb + (shape.settled ? 0 : UNSETTLED_FAULT),
  };
}

/** An end that the program turns must stand clear where it turned to; where the user put it is the user's to answer for. */
function turnedEndMargin(end: EndSetting, clockRad: number, field: RunField): number {
  return end.turns ? endMarginMm(end, clockRad, field) : Number.POSITIVE_INFINITY;
}

/** What a place that falls too little counts for, in mm of clearance missing, per unit of slope missing. */
const CLIMB_WEIGHT_MM = 100;
/** mm. How finely the fall of a shape is looked at. */
const FALL_STEP_MM = 4;

/** How far the worst place of the live hose misses its least fall; 0 where it falls enough all along. */
function climbFault({ down, leastSin }: Fall, { curve }: Shape): number {
  const total = curveLengthMm(curve);
  const steps = Math.ceil(total / FALL_STEP_MM);
  let missing = 0;
  for (let i = 0; i <= steps; i++)
    missing = Math.max(missing, leastSin - dot(curveAt(curve, (total * i) / steps).tangent, down));
  return missing * CLIMB_WEIGHT_MM;
}

/** A shape that did not come to rest is worse than any that did. */
const UNSETTLED_FAULT = 1000;
