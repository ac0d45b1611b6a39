import type { RunField } from '../bay/runField.ts';
import { clearSpace } from '../search/clearSpace.ts';
import { passSameSides } from '../search/distinctWays.ts';
import type { Route } from './routeRun.ts';

/**
 * Whether one route can be drawn over to another between the same stations without crossing what is blocked in the field, as far as
 * straight threads between them show it: true is proven, false is not.
 */
export function goTheSameSides(one: Route, other: Route, field: RunField): boolean {
  const space = clearSpace({ field });
  return one.ways.every((way, i) => {
    const across = other.ways[i];
    return across !== undefined && passSameSides(space, way.path, across.path);
  });
}
