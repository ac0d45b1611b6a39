import type { Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import { centrelineOf } from './centreline.ts';
import { drawnTaut } from './drawnTaut.ts';
import type { Shape } from './relaxRoute.ts';
import { measuredLine, routeAlong } from './routeAlong.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';

/** mm. By how much a hose that was judged clean may seem too near as a line of arcs: its own proof, twice, and the arcs. */
const JUDGED_CLEAN_MM = 0.3;

/**
 * The shortest route on a clean hose's own side of things: the hose's line drawn taut in the clear space between its holds
 * (`drawnTaut`). undefined where a line of arcs along the hose is not clear after all. Nothing is searched for, so it
 * takes a fraction of a search. effort: as in `drawnTaut`; quick is about a third of normal and may leave a little more length.
 */
export function tautRoute(
  setting: RunSetting,
  field: RunField,
  shape: Shape,
  watch: Watch,
  effort: 'quick' | 'normal' = 'normal',
): Route | undefined {
  const along = routeAlong(setting, measuredLine(centrelineOf(shape.curve).points));
  return drawnTaut(setting, along, field, { offsetMm: JUDGED_CLEAN_MM, effort }, watch);
}
