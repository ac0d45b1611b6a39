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
 * takes it over to another. Two lays are known to be there and the shorter is taken: the route itself drawn taut, and the shortest of
 * the close routes (those of the least radius) that can be drawn over to it without crossing what is blocked
 * (`goTheSameSides`). field: what the routes were led in. An upper bound, as every length of the search.
 */
export function tautLiveMm(
  setting: RunSetting,
  route: Route,
  close: readonly Route[],
  field: RunField,
  watch: Watch,
): number {
  // A close route was drawn taut when it was found.
  const drawn = (): Route => drawnTaut(setting, route, field, DRAWN, watch) ?? route;
  const own = close.includes(route)
    ? route
    : remembered(field, `taut ${setting.minRadiusMm} ${setting.seed} ${JSON.stringify(route)}`, drawn);
  const ownMm = liveMmOf(own);
  const shorter = close.filter((r) => liveMmOf(r) < ownMm).sort((a, b) => liveMmOf(a) - liveMmOf(b));
  const sameSides = shorter.find((r) => goTheSameSides(r, route, field));
  return sameSides === undefined ? ownMm : liveMmOf(sameSides);
}

const DRAWN = { offsetMm: 0, effort: 'quick' } as const;

/** Live length of a hose that lies along a route, mm. */
export function liveMmOf({ lengthMm, tailMm }: Route): number {
  return lengthMm + tailMm.a + tailMm.b;
}
