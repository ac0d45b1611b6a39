import { CLEARANCE_PROOF_MM, LIMIT_RELATIVE } from '../../base/tolerances.ts';
import { distance, triple, type Vec3 } from '../../base/vec3.ts';
import { lengthsOf } from '../../document/lay/lengthsOf.ts';
import type { EndPose, Lay, LaySupport, Outcome } from '../../document/lay/schema.ts';
import { sleeveCut } from '../../document/lay/sleeveCut.ts';
import { cutOffMm } from '../../document/parts/cutOff.ts';
import type { Project } from '../../document/project/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { leastRadius } from '../../geometry/curveLimits.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { FittedEnd } from '../ends/endPose.ts';
import { centrelineOf } from './centreline.ts';
import { clockOf, endPoseOf } from './endsOfLay.ts';
import { measureClearances } from './measureClearances.ts';
import { measureEndRoom } from './measureEndRoom.ts';
import { measureProfile } from './measureProfile.ts';
import type { Shape } from './relaxRoute.ts';
import type { EndSetting, RunSetting } from './runSetting.ts';

/** Relative. How far below the found least radius its proof may lie. */
const RADIUS_PROOF = 0.0002;
/** mm. A hose with no bend has no radius; the report says this instead of infinity, which JSON cannot hold. */
const STRAIGHT_RADIUS_MM = 1e6;

export interface MeasureInput {
  readonly project: Project;
  readonly setting: RunSetting;
  readonly shape: Shape;
  readonly tautLiveMm: number;
  readonly outcome: Outcome;
  readonly reason?: string;
  readonly bay: BayIndex;
  readonly others: TubeField;
  readonly timingsMs: Record<string, number>;
}

/** Everything the report says of one laid hose, measured on its final centreline with proven limits. */
export function measureLay(input: MeasureInput): Lay {
  const { setting, shape } = input;
  const cutLengthMm = curveLengthMm(shape.curve);
  const cutOff = { a: cutOffMm(setting.a.end), b: cutOffMm(setting.b.end) };
  const overallLengthMm = cutLengthMm + cutOff.a + cutOff.b;
  const centreline = centrelineOf(shape.curve);
  return {
    run: setting.run,
    outcome: input.outcome,
    ...(input.reason === undefined ? {} : { reason: input.reason }),
    centreline,
    outsideDiameterMm: 2 * setting.outsideRadiusMm,
    ends: {
      a: endPose(setting.a, shape.a, shape.clockARad, input.bay),
      b: endPose(setting.b, shape.b, shape.clockBRad, input.bay),
    },
    supports: supportsOf(setting, shape),
    cutLengthMm,
    liveLengthMm: shape.liveLengthMm,
    tautLengthMm: input.tautLiveMm,
    overallLengthMm,
    cutOffMm: cutOff,
    lengths: lengthsOf({ cutLengthMm, a: setting.a.end, b: setting.b.end }),
    ...sleeveOf(setting, cutLengthMm, centreline),
    slack: slackOf(shape.liveLengthMm, input.tautLiveMm),
    clock: clockOf(input.project, setting, shape, overallLengthMm),
    minRadius: minRadiusOf(setting, shape.curve),
    straightTailMm: { ...shape.tailMm },
    clearances: measureClearances(input.project, setting, shape, input.bay, input.others, CLEARANCE_PROOF_MM),
    profile: measureProfile(input.project, setting, shape, input.bay, input.others),
    residual: shape.residual,
    timingsMs: input.timingsMs,
  };
}

function sleeveOf(setting: RunSetting, cutLengthMm: number, centreline: Lay['centreline']): Pick<Lay, 'sleeve'> {
  const { sleeve, a, b } = setting;
  if (sleeve === undefined) return {};
  const { hoseDiameterMm } = sleeve;
  return { sleeve: sleeveCut({ cutLengthMm, centreline, hoseDiameterMm, sleeve, a: a.end, b: b.end }) };
}

/** Live over taut, less one, to one in a million: finer than lengths are known, so a wanted 5 % reads as 5 %. */
function slackOf(liveMm: number, tautMm: number): number {
  return Math.round((liveMm / tautMm - 1) / LIMIT_RELATIVE) * LIMIT_RELATIVE + 0;
}

function endPose(setting: EndSetting, fitted: FittedEnd, clockRad: number, bay: BayIndex): EndPose {
  const room = measureEndRoom(setting, clockRad, bay);
  return { ...(room === undefined ? {} : { room }), ...endPoseOf(setting, fitted, clockRad) };
}

function supportsOf(setting: RunSetting, shape: Shape): LaySupport[] {
  const held = shape.holds.map((hold, i): LaySupport => {
    const arcLengthMm = shape.holdsAtMm[i] as number;
    return {
      id: hold.id,
      kind: hold.kind,
      proposed: hold.proposed,
      at: { arcLengthMm, point: triple(hold.pose.point) },
      axis: triple(hold.pose.direction),
    };
  });
  const guides = setting.supports.filter((s) => s.kind === 'waypoint');
  return [...held, ...guides.map((g) => guideSupport(g.id, g.point, shape.curve))];
}

/** A waypoint holds nothing; it is reported where the hose passes nearest to it. */
function guideSupport(id: string, point: Vec3, curve: CubicCurve): LaySupport {
  const { points, arcLengthMm } = centrelineOf(curve);
  let best = 0;
  const off = (i: number): number => distance(points[i]!, point);
  for (let i = 1; i < points.length; i++) if (off(i) < off(best)) best = i;
  const at = arcLengthMm[best] as number;
  const place = curveAt(curve, at);
  return {
    id,
    kind: 'waypoint',
    proposed: false,
    at: { arcLengthMm: at, point: triple(place.point) },
    axis: triple(place.tangent),
  };
}

function minRadiusOf(setting: RunSetting, curve: CubicCurve): Lay['minRadius'] {
  const least = leastRadius(curve, RADIUS_PROOF);
  return {
    radiusMm: Math.min(least.found, STRAIGHT_RADIUS_MM),
    provenAtLeastMm: Math.min(least.provenAtLeast, STRAIGHT_RADIUS_MM),
    limitMm: setting.minRadiusMm,
    at: { arcLengthMm: least.arcLengthMm, point: triple(least.point) },
  };
}
