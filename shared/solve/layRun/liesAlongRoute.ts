import type { Vec3 } from '../../base/vec3.ts';
import { curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import type { RunField } from '../bay/runField.ts';
import { clearSpace } from '../search/clearSpace.ts';
import { goSameSides } from '../search/distinctWays.ts';
import type { Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { poseOnRoute } from './spans.ts';

/** Places compared on the hose and on its route. */
const PLACES = 40;

/** Whether a hose can be drawn over to the route that it was let go along without crossing what is blocked: true is proven, false is not. */
export function liesAlongRoute(setting: RunSetting, route: Route, shape: Shape, field: RunField): boolean {
  return goSameSides(clearSpace({ field }), placesOfHose(setting, shape), placesOfRoute(route));
}

function placesOfHose({ a, b }: RunSetting, { curve, tailMm }: Shape): Vec3[] {
  const fromMm = a.end.shoulderToMouthMm + tailMm.a;
  const toMm = curveLengthMm(curve) - b.end.shoulderToMouthMm - tailMm.b;
  return placesBetween(fromMm, toMm, (alongMm) => curveAt(curve, alongMm).point);
}

function placesOfRoute(route: Route): Vec3[] {
  return placesBetween(0, route.lengthMm, (alongMm) => poseOnRoute(route, alongMm).point);
}

function placesBetween(fromMm: number, toMm: number, at: (alongMm: number) => Vec3): Vec3[] {
  return Array.from({ length: PLACES + 1 }, (_, i) => at(fromMm + ((toMm - fromMm) * i) / PLACES));
}
