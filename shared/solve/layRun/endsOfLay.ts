import { radiansToDegrees, wrapDegrees } from '../../base/units.ts';
import { triple } from '../../base/vec3.ts';
import type { AdapterPose, Clock, EndPose } from '../../document/lay/schema.ts';
import type { FittedAdapter } from '../../document/project/fitAdapters.ts';
import type { Project } from '../../document/project/schema.ts';
import { clockToleranceRule } from '../../document/rules/clockRules.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CubicCurve } from '../../geometry/cubicCurve.ts';
import { clockBetween } from '../ends/clock.ts';
import type { FittedEnd } from '../ends/endPose.ts';
import type { EndSetting, RunSetting } from './runSetting.ts';

/** A hose's curve with its ends as they stand. */
interface ClockedLine {
  readonly curve: CubicCurve;
  readonly a: FittedEnd;
  readonly b: FittedEnd;
}

/** How an end stands, as it is told. clockRad: its own, about the port's axis. */
export function endPoseOf(setting: EndSetting, fitted: FittedEnd, clockRad: number): EndPose {
  return {
    seatPoint: triple(fitted.seatPoint),
    bendPoint: triple(fitted.bendPoint),
    shoulderPoint: triple(fitted.shoulderPoint),
    mouthPoint: triple(fitted.mouthPoint),
    ...(fitted.body.length > 4 ? { body: fitted.body.map(triple) } : {}),
    ...(setting.adapters === undefined ? {} : { adapters: setting.adapters.map(adapterPose) }),
    outletAxis: triple(fitted.outletAxis),
    up: triple(fitted.up),
    hoseAxis: triple(fitted.hoseAxis),
    ownClockDeg: setting.end.bendAngleDeg === 0 ? 0 : wrapDegrees(radiansToDegrees(clockRad)),
    ownClockChosen: setting.turns,
  };
}

/** An adapter, as it is told. */
export function adapterPose({ adapter, clockDeg, points, branch }: FittedAdapter): AdapterPose {
  return {
    id: adapter.id,
    clockDeg: wrapDegrees(clockDeg),
    points: points.map(triple),
    ...(branch === undefined ? {} : { branch: branch.map(triple) }),
    diameterMm: adapter.diameterMm,
  };
}

/** The clock between the two ends of a hose that lies so. */
export function clockOf(project: Project, setting: RunSetting, line: ClockedLine, overallLengthMm: number): Clock {
  const aStraight = setting.a.end.bendAngleDeg === 0;
  const bStraight = setting.b.end.bendAngleDeg === 0;
  if (aStraight || bStraight)
    return { kind: 'free', reason: aStraight && bStraight ? 'both-straight' : aStraight ? 'a-straight' : 'b-straight' };
  return {
    kind: 'angle',
    deg: clockBetween(line.curve, line.a.up, line.b.up),
    toleranceDeg: ruleValue(
      project,
      clockToleranceRule(overallLengthMm, project.paperwork?.clockTolerance),
      setting.run,
    ).value,
  };
}
