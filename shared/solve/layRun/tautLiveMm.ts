import type { Route } from './routeRun.ts';

/**
 * Live length of the shortest lay on this route's side of things. A gentler route is measured against the longest close
 * route that is not longer than itself: the one on its own side, if there are several.
 */
export function tautLiveMm(route: Route, close: readonly Route[]): number {
  const lengths = close.map((r) => r.lengthMm + r.tailMm.a + r.tailMm.b).sort((a, b) => a - b);
  const own = route.lengthMm + route.tailMm.a + route.tailMm.b;
  return lengths.filter((l) => l <= own).at(-1) ?? own;
}
