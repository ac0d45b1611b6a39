import { addScaled } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import type { Way } from '../search/problem.ts';
import { type Route, routeRun } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * What is tried for a suction hose: how much of the stretch before the pump is led straight to a clamp at its far end, and
 * the radius of the rest over the hose's own: more of either leaves the relaxed hose more room.
 */
const TRIED = [
  { straight: 1, radius: 1.08 },
  { straight: 0.8, radius: 1.16 },
  { straight: 0.6, radius: 1.3 },
] as const;

/**
 * Routes on which a clamp holds the hose straight before its pump, so that its bends are taken beyond. Each carries its
 * clamp (`clampsAtMm`). tailMm: the straight tail that is wanted at both ends anyway.
 */
export function calmRoutes(setting: RunSetting, field: RunField, tailMm: number, watch: Watch): Route[] {
  const { calm } = setting.character;
  if (calm === undefined) return [];
  const { side, lengthMm } = calm;
  return TRIED.flatMap(({ straight, radius }) => {
    const longMm = Math.max(tailMm, straight * lengthMm);
    const tails = { a: tailMm, b: tailMm, [side]: longMm };
    const { routes } = routeRun(setting, field, radius * setting.minRadiusMm, tails, 1, 'quick', watch);
    return routes.map((route) => withClamp(route, side, tailMm));
  });
}

/** The long tail of a route as an ordinary tail, a straight piece of way, and a clamp at the end of that. */
function withClamp(route: Route, side: 'a' | 'b', tailMm: number): Route {
  const extraMm = route.tailMm[side] - tailMm;
  if (extraMm <= 0) return route;
  const last = side === 'a' ? 0 : route.ways.length - 1;
  const ways = route.ways.map((way, i) => (i === last ? withStraight(way, side, extraMm) : way));
  return {
    ...route,
    ways,
    lengthMm: route.lengthMm + extraMm,
    tailMm: { ...route.tailMm, [side]: tailMm },
    clampsAtMm: [side === 'a' ? extraMm : route.lengthMm],
  };
}

function withStraight(way: Way, side: 'a' | 'b', lengthMm: number): Way {
  const { start, segments } = way.path;
  const line = { kind: 'line', lengthMm } as const;
  const path =
    side === 'a'
      ? {
          start: { ...start, point: addScaled(start.point, start.direction, -lengthMm) },
          segments: [line, ...segments],
        }
      : { start, segments: [...segments, line] };
  return { ...way, path, lengthMm: way.lengthMm + lengthMm };
}
