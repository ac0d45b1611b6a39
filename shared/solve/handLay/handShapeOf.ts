import { CLEARANCE_PROOF_MM, RADIUS_RELATIVE } from '../../base/tolerances.ts';
import { radiansToDegrees } from '../../base/units.ts';
import { triple } from '../../base/vec3.ts';
import type { HandHold, HandShape } from '../../document/hand/handChange.ts';
import type { Clearance, Lay, LaySupport } from '../../document/lay/schema.ts';
import { cutOffMm } from '../../document/parts/cutOff.ts';
import type { Project } from '../../document/project/schema.ts';
import { type CubicCurve, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { leastRadius } from '../../geometry/curveLimits.ts';
import { brokenBy } from '../character/brokenBy.ts';
import type { FittedEnd } from '../ends/endPose.ts';
import { centrelineOf } from '../layRun/centreline.ts';
import { clockOf, endPoseOf } from '../layRun/endsOfLay.ts';
import type { RunSetting } from '../layRun/runSetting.ts';

/** A run in the hand, shoulder to shoulder, before it is measured. */
export interface HandLine {
  readonly curve: CubicCurve;
  readonly a: FittedEnd;
  readonly b: FittedEnd;
  readonly clockARad: number;
  readonly clockBRad: number;
  readonly supports: readonly LaySupport[];
  readonly tailMm: { readonly a: number; readonly b: number };
  readonly hold?: HandHold;
  /** false = the rod came to no rest */
  readonly settled: boolean;
  /** what stands in the way of the change itself, in words */
  readonly refused?: string;
}

/** How near the hose comes: the tightest clearance, and its margin (Infinity where nothing is near; also where it leaves the scan). */
export interface Nearness {
  readonly tightest?: Clearance;
  readonly marginMm: number;
  readonly outsideScan: boolean;
}

/** Relative. How far below the found least radius its proof may lie while the hose is in the hand. */
const RADIUS_PROOF = 0.002;
/** mm. A hose with no bend has no radius; this instead of infinity, which JSON cannot hold. */
const STRAIGHT_RADIUS_MM = 1e6;

/** Everything that is told of a hose in the hand. */
export function handShapeOf(project: Project, setting: RunSetting, line: HandLine, near: Nearness): HandShape {
  const { curve } = line;
  const cutLengthMm = curveLengthMm(curve);
  const overallLengthMm = cutLengthMm + cutOffMm(setting.a.end) + cutOffMm(setting.b.end);
  const least = leastRadius(curve, RADIUS_PROOF);
  const minRadius = {
    radiusMm: Math.min(least.found, STRAIGHT_RADIUS_MM),
    provenAtLeastMm: Math.min(least.provenAtLeast, STRAIGHT_RADIUS_MM),
    limitMm: setting.minRadiusMm,
    at: { arcLengthMm: least.arcLengthMm, point: triple(least.point) },
  };
  const centreline = centrelineOf(curve);
  const reason = reasonOf(line, minRadius, near) ?? fallReason(setting, line, centreline);
  return {
    run: setting.run,
    outcome: reason === undefined ? 'laid' : 'near-miss',
    ...(reason === undefined ? {} : { reason }),
    centreline,
    outsideDiameterMm: 2 * setting.outsideRadiusMm,
    ends: { a: endPoseOf(setting.a, line.a, line.clockARad), b: endPoseOf(setting.b, line.b, line.clockBRad) },
    supports: [...line.supports],
    cutLengthMm,
    liveLengthMm: cutLengthMm - setting.a.end.shoulderToMouthMm - setting.b.end.shoulderToMouthMm,
    overallLengthMm,
    clock: clockOf(project, setting, line, overallLengthMm),
    minRadius,
    straightTailMm: { ...line.tailMm },
    ...(near.tightest === undefined ? {} : { tightest: near.tightest }),
    ...(line.hold === undefined ? {} : { hold: line.hold }),
  };
}

/** mm. A hose further than this from the hand is not where the hand wants it. */
const IN_HAND_MM = 1;

/** What is wrong with the hose as it is held, worst first; nothing where it could be left so. */
function reasonOf(line: HandLine, minRadius: HandShape['minRadius'], near: Nearness): string | undefined {
  const { hold, refused, settled } = line;
  if (refused !== undefined) return refused;
  if (hold !== undefined && hold.offMm > IN_HAND_MM)
    return `stays ${rounded(hold.offMm)} mm from the hand: something is in the way, it is held near by, or it is too short`;
  if (!settled) return 'does not come to rest here';
  if (near.outsideScan) return `leaves the scanned bay by ${rounded(-near.marginMm)} mm`;
  const { tightest } = near;
  if (near.marginMm < -CLEARANCE_PROOF_MM && tightest !== undefined)
    return `needs ${rounded(-near.marginMm)} mm more room at ${nameOf(tightest)}: ${rounded(tightest.clearanceMm)} mm there, ${rounded(tightest.requiredMm)} mm wanted`;
  if (minRadius.radiusMm < minRadius.limitMm * (1 - RADIUS_RELATIVE))
    return `bends to ${rounded(minRadius.radiusMm)} mm where the hose allows ${rounded(minRadius.limitMm)} mm`;
  return undefined;
}

/** Where a drain does not fall enough; nothing for hoses that need not fall. */
function fallReason(setting: RunSetting, line: HandLine, centreline: Lay['centreline']): string | undefined {
  const { fall } = setting.character;
  if (fall === undefined) return undefined;
  const mouthsMm = {
    a: setting.a.end.shoulderToMouthMm,
    b: curveLengthMm(line.curve) - setting.b.end.shoulderToMouthMm,
  };
  const holds = line.supports.map(({ id, proposed, at }) => ({ id, proposed, atMm: at.arcLengthMm }));
  const shape = {
    ...centreline,
    a: { way: line.a.body.slice(0, -2) },
    b: { way: line.b.body.slice(0, -2) },
    mouthsMm,
    holds,
  };
  const broken = brokenBy(setting.character, shape, setting.minRadiusMm).find((b) => b.wish === 'fall');
  if (broken === undefined) return undefined;
  const leastDeg = radiansToDegrees(Math.asin(fall.leastSin));
  return `falls ${rounded(broken.measured)} degrees ${rounded(broken.at.arcLengthMm)} mm from shoulder A, where a drain has to fall at least ${rounded(leastDeg)}`;
}

function nameOf({ to }: Clearance): string {
  return to.kind === 'run' ? `run ${to.id}` : (to.part ?? to.id);
}

function rounded(mm: number): string {
  return (Math.round(mm * 10) / 10).toString();
}
