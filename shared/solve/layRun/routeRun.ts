import { SAME_DIRECTION_RAD, SAME_POINT_MM } from '../../base/tolerances.ts';
import { addScaled, angleBetween, distance, dot, scale, sub, unit, type Vec3 } from '../../base/vec3.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type Pose, pathLengthMm, poseOnPath } from '../../geometry/arcLinePath.ts';
import type { RunField } from '../bay/runField.ts';
import type { Effort, EndChoice, SearchProblem, SearchResult, Way } from '../search/problem.ts';
import { searchWays } from '../search/searchWays.ts';
import { withinSlab } from '../search/slab.ts';
import { underCeiling } from '../search/underCeiling.ts';
import { planeStops } from './planeStops.ts';
import { type RunSetting, searchEnd, tailPose } from './runSetting.ts';
import { type Station, withLocks } from './stations.ts';

export type { Station } from './stations.ts';

/** One way from END A to END B: arcs and straights between the tails, station by station. */
export interface Route {
  readonly ways: readonly Way[];
  /** between the ways, in order */
  readonly stations: readonly Station[];
  readonly clockARad: number;
  readonly clockBRad: number;
  /** tail to tail, mm */
  readonly lengthMm: number;
  readonly tailMm: { readonly a: number; readonly b: number };
  /** clamps that belong to this route, mm from the tail of END A */
  readonly clampsAtMm?: readonly number[];
  /** by way, mm: how much longer than its way a stretch tied to another hose is, to lie like that one */
  readonly tiedSlackMm?: readonly (number | undefined)[];
}

export interface RoutesFound {
  readonly routes: readonly Route[];
  /** why there is none, from the stretch that failed */
  readonly failure?: SearchResult;
}

/**
 * Finds up to `count` routes of a run that keep the curvature of `radiusMm` and the field's margins, by the global
 * search on each stretch between supports. With supports in between, only the shortest way of each stretch is taken.
 */
export function routeRun(
  setting: RunSetting,
  field: RunField,
  radiusMm: number,
  tailMm: number | Route['tailMm'],
  count: number,
  effort: Effort,
  watch: Watch,
): RoutesFound {
  const stations = stationsOf(setting);
  const tails = {
    a: tailToStation(setting, 'a', typeof tailMm === 'number' ? tailMm : tailMm.a, stations[0]),
    b: tailToStation(setting, 'b', typeof tailMm === 'number' ? tailMm : tailMm.b, stations[stations.length - 1]),
  };
  const stops: EndChoice[] = [
    searchEnd(setting.a, 'a', tails.a, field),
    ...stations.map((s): EndChoice => ({ kind: 'held', pose: s.pose })),
    searchEnd(setting.b, 'b', tails.b, field),
  ];
  const { crest } = setting.character;
  const room = crest === undefined || !setting.characterAsked ? field : underCeiling(field, crest);
  const ways: (readonly Way[])[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    stopIfCancelled(watch);
    const part = partOf(watch, i / (stops.length - 1), (i + 1) / (stops.length - 1));
    const from = stops[i] as EndChoice;
    const to = stops[i + 1] as EndChoice;
    const given = wayOfLock(stations[i - 1]) ?? wayOfNoLength(from, to);
    if (given !== undefined) {
      ways.push([given]);
      continue;
    }
    const problem: SearchProblem = {
      from,
      to,
      minRadiusMm: radiusMm,
      field: room,
      ways: stations.length === 0 ? count : 1,
      seed: setting.seed + i,
      effort,
      withoutNearMiss: true,
      ...asksOf(setting),
    };
    const result = searchInPlane(setting, stations, i, problem, part) ?? searchWays(problem, part);
    if (result.ways.length === 0) return { routes: [], failure: result };
    ways.push(result.ways);
  }
  if (stations.length === 0)
    return { routes: (ways[0] as readonly Way[]).map((w) => routeOf(setting, [w], stations, tails)) };
  return {
    routes: [
      routeOf(
        setting,
        ways.map((w) => w[0] as Way),
        stations,
        tails,
      ),
    ],
  };
}

/** How many times a plane's tolerance the way may lie off it: the hose itself lies nearer to its plane than its way. */
const SLAB_TOLERANCES = 3;

/** A stretch that is to lie in one plane is looked for in that plane first; nothing where its ends or the bay forbid it. */
function searchInPlane(
  setting: RunSetting,
  stations: readonly Station[],
  stretch: number,
  problem: SearchProblem,
  watch: Watch,
): SearchResult | undefined {
  const ends = [stretch === 0 ? 'a' : stations[stretch - 1], stations[stretch] ?? 'b'];
  if (!setting.characterAsked || ends.some((e) => typeof e === 'object' && e.kind === 'waypoint')) return undefined;
  const begin = typeof ends[0] === 'object' ? ends[0].id : 'a';
  const plane = setting.character.planes.find((p) => p.from === begin);
  if (plane === undefined) return undefined;
  const found = planeStops(problem.from, problem.to, problem.minRadiusMm).flatMap(({ from, to, normal }) => {
    const slab = { point: from.pose.point, halfMm: SLAB_TOLERANCES * plane.mostMm };
    const field = normal === undefined ? problem.field : withinSlab(problem.field, { ...slab, normal });
    const held = { from: { kind: 'held', pose: from.pose }, to: { kind: 'held', pose: to.pose } } as const;
    const result = searchWays({ ...problem, ...held, field }, watch);
    return result.ways.map((way) => ({ ...way, fromClockRad: from.clockRad, toClockRad: to.clockRad }));
  });
  const ways = found.sort((p, q) => p.lengthMm - q.lengthMm).slice(0, problem.ways);
  return ways.length === 0 ? undefined : { outcome: 'found', ways, expanded: 0 };
}

/** What of the run's character the search keeps by itself. */
export function asksOf({
  character: { fall, crest },
  characterAsked,
}: RunSetting): Pick<SearchProblem, 'fall' | 'noCrest'> {
  if (!characterAsked) return {};
  return { ...(fall === undefined ? {} : { fall }), ...(crest === undefined ? {} : { noCrest: crest }) };
}

/** The route of ways laid one after the other. */
export function routeOf(
  setting: RunSetting,
  ways: readonly Way[],
  stations: readonly Station[],
  tailMm: { a: number; b: number },
): Route {
  return {
    ways,
    stations,
    clockARad: setting.a.turns ? (ways[0] as Way).fromClockRad : setting.a.clockRad,
    clockBRad: setting.b.turns ? (ways[ways.length - 1] as Way).toClockRad : setting.b.clockRad,
    lengthMm: ways.reduce((sum, w) => sum + pathLengthMm(w.path), 0),
    tailMm,
  };
}

/** Where a locked stretch begins, the way on is the hose that lies there. */
export function wayOfLock(station: Station | undefined): Way | undefined {
  if (station?.locked === undefined) return undefined;
  const { path } = station.locked;
  return { path, lengthMm: pathLengthMm(path), fromClockRad: 0, toClockRad: 0, leastMarginMm: 0 };
}

/** A tail that ends where a clamp stands needs no way between them. */
export function wayOfNoLength(from: EndChoice, to: EndChoice): Way | undefined {
  if (from.kind !== 'held' || to.kind !== 'held') return undefined;
  const apart = distance(from.pose.point, to.pose.point);
  if (apart > SAME_POINT_MM || angleBetween(from.pose.direction, to.pose.direction) > SAME_DIRECTION_RAD)
    return undefined;
  return { path: { start: to.pose, segments: [] }, lengthMm: 0, fromClockRad: 0, toClockRad: 0, leastMarginMm: 0 };
}

/** The user's supports as poses. A waypoint without an axis is passed along the line between its neighbours. */
function stationsOf(setting: RunSetting): readonly Station[] {
  const points: Vec3[] = [setting.a.port.seatPoint, ...setting.supports.map((s) => s.point), setting.b.port.seatPoint];
  const stations = setting.supports.map((s, i) => ({
    id: s.id,
    kind: s.kind,
    proposed: false,
    pose: {
      point: s.point,
      direction: s.axis ?? unit(sub(points[i + 2] as Vec3, points[i] as Vec3)),
    },
  }));
  return withLocks(stations, setting.supports, setting.locks ?? []);
}

/**
 * A support that stands straight before a mouth, nearer than the wanted tail, ends the tail: the hose is held there.
 * clockRad: of a swivel end, where it is known.
 */
export function tailToStation(
  setting: RunSetting,
  side: 'a' | 'b',
  tailMm: number,
  station: Station | undefined,
  clockRad?: number,
): number {
  const end = setting[side];
  if (station === undefined || (end.turns && clockRad === undefined)) return tailMm;
  const mouth = tailPose(end, side, 0, clockRad ?? end.clockRad);
  const outward = side === 'a' ? mouth.direction : scale(mouth.direction, -1);
  const ahead = dot(sub(station.pose.point, mouth.point), outward);
  const aside = distance(station.pose.point, addScaled(mouth.point, outward, ahead));
  const [asideMm, turnRad] = end.turns ? [TURNED_ASIDE_MM, TURNED_RAD] : [SAME_POINT_MM, SAME_DIRECTION_RAD];
  const straight = aside < asideMm && angleBetween(station.pose.direction, mouth.direction) < turnRad;
  return straight && ahead >= 0 ? Math.min(tailMm, ahead) : tailMm;
}

/** How far off a swivel end's line a support may stand and still be on it: about what a clock found to 1e-4 rad leaves open. */
const TURNED_ASIDE_MM = 0.2;
const TURNED_RAD = 0.002;

/** Points and unit directions along one way between two lengths of it, at most stepMm apart, ends included. */
export function sampleWay(way: Way, fromMm: number, toMm: number, stepMm: number): Pose[] {
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / stepMm));
  const poses: Pose[] = [];
  for (let i = 0; i <= steps; i++) poses.push(poseOnPath(way.path, fromMm + ((toMm - fromMm) * i) / steps));
  return poses;
}
