import { curveLengthMm, straightCurve } from '../../geometry/cubicCurve.ts';
import type { Shape } from './relaxRoute.ts';
import { fittedAt, type RunSetting } from './runSetting.ts';

/** The straight line between the shoulders, for a run that no hose can make: something to point at, and never `laid`. */
export function straightShape(setting: RunSetting): Shape {
  const a = fittedAt(setting.a, setting.a.clockRad);
  const b = fittedAt(setting.b, setting.b.clockRad);
  const curve = straightCurve(a.shoulderPoint, b.shoulderPoint);
  return {
    curve,
    a,
    b,
    clockARad: setting.a.clockRad,
    clockBRad: setting.b.clockRad,
    liveLengthMm: curveLengthMm(curve),
    holds: [],
    holdsAtMm: [],
    tailMm: { a: 0, b: 0 },
    settled: false,
    residual: 0,
    energyNmm: 0,
    contactForceN: 0,
    rods: [],
    rodLengthsMm: [],
  };
}
