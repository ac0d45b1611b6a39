import type { RunField } from '../bay/runField.ts';
import { goTheSameSides } from './goTheSameSides.ts';
import type { Route } from './routeRun.ts';
import { liveMmOf } from './tautLiveMm.ts';

/** Routes without those that repeat a shorter one: of routes shown to go the same sides of everything only the shortest is left. */
export function distinctRoutes(routes: readonly Route[], field: RunField): Route[] {
  const left: Route[] = [];
  for (const route of [...routes].sort((a, b) => liveMmOf(a) - liveMmOf(b)))
    if (!left.some((shorter) => goTheSameSides(shorter, route, field))) left.push(route);
  return left;
}
