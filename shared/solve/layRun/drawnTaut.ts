import { seededRandom } from '../../base/random.ts';
import type { Watch } from '../../base/watch.ts';
import { pathEnd } from '../../geometry/arcLinePath.ts';
import type { RunField } from '../bay/runField.ts';
import { type Candidate, candidateOf } from '../search/candidate.ts';
import { type ClearSpace, clearSpace, isPathClear } from '../search/clearSpace.ts';
import { shortestDirectConnection } from '../search/directConnections.ts';
import { BUDGETS } from '../search/effort.ts';
import type { EndChoice, Way } from '../search/problem.ts';
import { type ShortenedEnds, shorten, shortenByKicks } from '../search/shorten.ts';
import { asksOf, type Route, routeOf } from './routeRun.ts';
import { type RunSetting, searchEnd } from './runSetting.ts';

/**
 * A route drawn taut from where it lies: the shortest of the hose's least radius that it can be pulled to between its holds,
 * shortened, drawn tight and kicked as the search does with the first ways it finds, its swivels turning along. Stretches that are
 * locked stay. Nothing is searched for. offsetMm: what is added to every margin. undefined where the route is not clear in the field
 * with that. The length is an upper bound, not proven least.
 */
export function drawnTaut(
  setting: RunSetting,
  route: Route,
  field: RunField,
  { offsetMm, effort }: { readonly offsetMm: number; readonly effort: 'quick' | 'normal' },
  watch: Watch,
): Route | undefined {
  const space = clearSpace({ field, offsetMm, ...asksOf(setting) });
  const random = seededRandom(setting.seed);
  const ways: Way[] = [];
  for (const [i, way] of route.ways.entries()) {
    if (way.lengthMm === 0 || route.stations[i - 1]?.locked !== undefined) {
      ways.push(way);
      continue;
    }
    if (!isPathClear(space, way.path)) return undefined;
    const ends = endsOfWay(setting, route, i, field);
    const first = candidateOf(way.path, way.fromClockRad, way.toClockRad);
    const led = shorten(space, ends, first, BUDGETS[effort], random, watch);
    const direct = directOf(space, first, setting.minRadiusMm);
    const short = direct !== undefined && direct.lengthMm < led.lengthMm ? direct : led;
    const taut = shortenByKicks(space, ends, short, BUDGETS[effort], random, watch);
    ways.push({ ...taut, leastMarginMm: 0 });
  }
  return routeOf(setting, ways, route.stations, route.tailMm);
}

/** Ways begin and end where they do, but for swivels, which turn. */
function endsOfWay(setting: RunSetting, { ways, tailMm }: Route, i: number, field: RunField): ShortenedEnds {
  const { path } = ways[i] as Way;
  const held = (pose: Way['path']['start']): EndChoice => ({ kind: 'held', pose });
  const from = i === 0 ? searchEnd(setting.a, 'a', tailMm.a, field) : held(path.start);
  const to = i === ways.length - 1 ? searchEnd(setting.b, 'b', tailMm.b, field) : held(pathEnd(path));
  return { from, to, minRadiusMm: setting.minRadiusMm };
}

/** Short hoses turn in arcs from mouth to mouth: the shortest such line is better known than drawn. */
function directOf(space: ClearSpace, { path, fromClockRad, toClockRad }: Candidate, radiusMm: number) {
  const start = { pose: path.start, clockRad: fromClockRad };
  const goal = { pose: pathEnd(path), clockRad: toClockRad };
  return shortestDirectConnection(space, [start], [goal], radiusMm)?.candidate;
}
