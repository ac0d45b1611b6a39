import type { Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import { remembered } from '../search/remembered.ts';
import { drawnTaut } from './drawnTaut.ts';
import { goTheSameSides } from './goTheSameSides.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * Live length, mouth to mouth, of the shortest lay on a route's own side of things, mm: what slack is measured against. The taut hose
 * keeps the same radius, tails and clearances and goes round everything on the same side as the hose itself, since no pull
 * takes it over to another. That is the shortest of the close routes (those of the least radius, drawn taut when they were found)
 * that can be drawn over to it without crossing what is blocked (`goTheSameSides`); where none can, the route itself drawn taut.
 * field: what the routes were led in. An upper bound, as every length of the search.
 */
export function tautLiveMm(
  setting: RunSetting,
  route: Route,
  close: readonly Route[],
  field: RunField,
  watch: Watch,
): number {
  const shorter = close
    .filter((r) => r !== route && liveMmOf(r) <= liveMmOf(route))
    .sort((a, b) => liveMmOf(a) - liveMmOf(b))
    .find((r) => goTheSameSides(r, route, field));
  if (shorter !== undefined) return liveMmOf(shorter);
  if (close.includes(route)) return liveMmOf(route);
  const drawn = (): Route => drawnTaut(setting, route, field, DRAWN, watch) ?? route;
  return liveMmOf(remembered(field, `taut ${setting.minRadiusMm} ${setting.seed} ${JSON.stringify(route)}`, drawn));
}

const DRAWN = { offsetMm: 0, effort: 'quick' } as const;

/** Live length of a hose that lies along a route, mm. */
export function liveMmOf({ lengthMm, tailMm }: Route): number {
  return lengthMm + tailMm.a + tailMm.b;
}
