import { seededRandom } from '../../base/random.ts';
import type { Watch } from '../../base/watch.ts';
import { type Pose, pathEnd, pathLengthMm } from '../../geometry/arcLinePath.ts';
import type { RunField } from '../bay/runField.ts';
import { centrelineOf } from '../layRun/centreline.ts';
import type { Shape } from '../layRun/relaxRoute.ts';
import { asksOf, type Route, routeOf } from '../layRun/routeRun.ts';
import { type RunSetting, searchEnd } from '../layRun/runSetting.ts';
import { candidateOf } from '../search/candidate.ts';
import { type ClearSpace, isPathClear } from '../search/clearSpace.ts';
import { shortestDirectConnection } from '../search/directConnections.ts';
import { BUDGETS } from '../search/effort.ts';
import type { EndPose } from '../search/endPoses.ts';
import type { EndChoice, Way } from '../search/problem.ts';
import { shorten, shortenByKicks } from '../search/shorten.ts';
import { measuredLine, routeAlong } from './routeAlong.ts';

/** mm. By how much a hose that was judged clean may seem too near as a line of arcs: its own proof, twice, and the arcs. */
const JUDGED_CLEAN_MM = 0.3;

/**
 * The shortest route on a clean hose's own side of things: the hose's line, shortened and drawn tight in the clear space
 * between its holds as the search does with the first ways it finds. undefined where a line of arcs along the hose is
 * not clear after all. Nothing is searched for, so it takes a fraction of a search.
 */
export function tautRoute(setting: RunSetting, field: RunField, shape: Shape, watch: Watch): Route | undefined {
  const along = routeAlong(setting, measuredLine(centrelineOf(shape.curve).points));
  const space: ClearSpace = { field, offsetMm: JUDGED_CLEAN_MM, plugs: [], ...asksOf(setting) };
  const random = seededRandom(setting.seed);
  const ways: Way[] = [];
  for (const [i, way] of along.ways.entries()) {
    if (way.lengthMm === 0 || along.stations[i - 1]?.locked !== undefined) {
      ways.push(way);
      continue;
    }
    if (!isPathClear(space, way.path)) return undefined;
    const held = (pose: Way['path']['start']): EndChoice => ({ kind: 'held', pose });
    const from = i === 0 ? searchEnd(setting.a, 'a', along.tailMm.a, field) : held(way.path.start);
    const last = i === along.ways.length - 1;
    const to = last ? searchEnd(setting.b, 'b', along.tailMm.b, field) : held(pathEnd(way.path));
    const ends = { from, to, minRadiusMm: setting.minRadiusMm };
    const first = candidateOf(way.path, way.fromClockRad, way.toClockRad);
    // Short hoses turn in arcs from mouth to mouth: the shortest such line is better known than drawn.
    const at = (pose: Pose, clockRad: number): EndPose => ({ pose, clockRad });
    const [start, goal] = [at(way.path.start, way.fromClockRad), at(pathEnd(way.path), way.toClockRad)];
    const direct = shortestDirectConnection(space, [start], [goal], setting.minRadiusMm)?.candidate;
    const led = shorten(space, ends, first, BUDGETS.normal, random, watch);
    const short = direct !== undefined && direct.lengthMm < led.lengthMm ? direct : led;
    const { path, fromClockRad, toClockRad } = shortenByKicks(space, ends, short, BUDGETS.normal, random, watch);
    ways.push({ path, lengthMm: pathLengthMm(path), fromClockRad, toClockRad, leastMarginMm: 0 });
  }
  return routeOf(setting, ways, along.stations, along.tailMm);
}
