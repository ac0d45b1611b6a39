import { ROUNDING_MM, SAME_POINT_MM } from '../../base/tolerances.ts';
import { angleBetween, distance, type Vec3 } from '../../base/vec3.ts';
import { type Pose, pathLengthMm, poseOnPath } from '../../geometry/arcLinePath.ts';
import type { CubicCurve } from '../../geometry/cubicCurve.ts';
import type { RodEnd } from '../rod/rodProblem.ts';
import type { Way } from '../search/problem.ts';
import { type Route, type Station, sampleWay } from './routeRun.ts';
import { type RunSetting, rodEnd } from './runSetting.ts';

/** A free stretch of hose between two places that hold it. */
export interface Span {
  readonly a: RodEnd;
  readonly b: RodEnd;
  readonly guess: readonly Pose[];
  /** of the route's stretch, mm */
  readonly tautMm: number;
  /** total turning of the route's stretch, rad */
  readonly turningRad: number;
  /** a stretch that stays as it lies */
  readonly locked?: CubicCurve;
  /** mm longer than taut that it is where it is tied to another hose, to lie like that one */
  readonly tiedSlackMm?: number;
}

export interface SpanPlan {
  readonly spans: readonly Span[];
  /** what holds the hose between the spans */
  readonly holds: readonly Station[];
}

/** mm. Sample step of the first guess: a quarter of the smallest bend radius of any hose in use. */
const GUESS_STEP_MM = 6;

/** A clamp that the program asks for: a place along the route, mm from the tail of END A. */
export interface ProposedClamp {
  readonly id: string;
  readonly alongMm: number;
  /** where it holds the hose, if not as the route goes there */
  readonly held?: HeldInSpan;
}

/** A place of the hose in one of the spans between what else holds it. */
export interface HeldInSpan {
  readonly span: number;
  /** from the span's start along the hose, mm, and how long the span was that the clamp was put on */
  readonly atMm: number;
  readonly ofMm: number;
  readonly pose: Pose;
}

/**
 * Cuts a route into the stretches of hose that are free between what holds them: clamps and pass-throughs of the user
 * and the clamps proposed on the route itself. Waypoints guide the route only and hold nothing.
 * freeClocks: whether ends that turn may go on turning as the hose relaxes, or stay at the route's clock.
 */
export function planSpans(
  setting: RunSetting,
  route: Route,
  proposed: readonly ProposedClamp[],
  freeClocks: boolean,
): SpanPlan {
  const locks = locksOf(route);
  const inLock = ({ alongMm }: ProposedClamp): boolean =>
    locks.some((lock) => alongMm > lock.fromMm - MIN_SPAN_MM && alongMm < lock.toMm + MIN_SPAN_MM);
  const free = proposed.filter((clamp) => clamp.held === undefined && !inLock(clamp));
  const cuts = cutsOf(route, free);
  const holds = cuts.map((c) => c.station);
  const bounds = [0, ...cuts.map((c) => c.alongMm), route.lengthMm];
  const ends: RodEnd[] = [
    rodEnd(setting.a, 'a', route.tailMm.a, route.clockARad, freeClocks),
    ...holds.map((h): RodEnd => ({ kind: 'held', point: h.pose.point, direction: h.pose.direction })),
    rodEnd(setting.b, 'b', route.tailMm.b, route.clockBRad, freeClocks),
  ];
  // Ties part a route into its ways; a clamp between them would part it otherwise, and then slack is shared as usual.
  const tied = free.length === 0 ? route.tiedSlackMm : undefined;
  const spans = bounds.slice(1).map((to, i): Span => {
    const lock = locks.find(({ fromMm }) => Math.abs(fromMm - (bounds[i] as number)) < MIN_SPAN_MM);
    const tiedSlackMm = lock === undefined ? tied?.[i] : 0;
    const guess = sampleRoute(route, bounds[i] as number, to);
    return {
      a: ends[i] as RodEnd,
      b: ends[i + 1] as RodEnd,
      guess,
      tautMm: reachingMm(to - (bounds[i] as number), ends[i] as RodEnd, ends[i + 1] as RodEnd),
      turningRad: turningOf(guess),
      ...(tiedSlackMm === undefined ? {} : { tiedSlackMm }),
      ...(lock === undefined ? {} : { locked: lock.curve }),
    };
  });
  return { spans: spans.filter((s) => s.tautMm > MIN_SPAN_MM), holds: holds.flatMap(toldHolds) };
}

/** mm. What a hose that reaches its end is longer than the distance to it, at least: a tenth of what makes two points one. */
const REACHES_MM = SAME_POINT_MM / 10;

/** A way's length, mm; that of a hose that reaches where the way, which meets its end to SAME_POINT_MM, is a hair shorter than the distance. */
function reachingMm(lengthMm: number, a: RodEnd, b: RodEnd): number {
  if (a.kind !== 'held' || b.kind !== 'held' || lengthMm < MIN_SPAN_MM) return lengthMm;
  const apartMm = distance(a.point, b.point);
  return lengthMm < apartMm - ROUNDING_MM ? apartMm + REACHES_MM : lengthMm;
}

/** A span of hose with the length it is to have. */
export interface CutSpan {
  readonly span: Span;
  readonly lengthMm: number;
}

/**
 * A span cut once more where clamps hold the hose, each part as long as the hose that lay there when they were put. A hose that is longer
 * or shorter since has that in its bows, in proportion to how much longer each is than its chord: what lies straight between
 * two clamps has none to give.
 */
export function cutWhereHeld(span: Span, lengthMm: number, held: readonly HeldInSpan[]): CutSpan[] {
  if (held.length === 0) return [{ span, lengthMm }];
  const ofMm = (held[0] as HeldInSpan).ofMm;
  const at = [0, ...held.map(({ atMm }) => atMm), ofMm];
  const last = span.guess.length - 1;
  const points = [span.guess[0] as Pose, ...held.map(({ pose }) => pose), span.guess[last] as Pose];
  const ends: RodEnd[] = [
    span.a,
    ...held.map(({ pose }): RodEnd => ({ kind: 'held', point: pose.point, direction: pose.direction })),
    span.b,
  ];
  const parts = at.slice(1).map((to, i) => {
    const from = at[i] as number;
    const chordMm = distance((points[i] as Pose).point, (points[i + 1] as Pose).point);
    return { from, to, bowMm: Math.max(0, to - from - chordMm) };
  });
  const bowsMm = parts.reduce((sum, { bowMm }) => sum + bowMm, 0);
  return parts.map(({ from, to, bowMm }, i) => {
    const share = bowsMm > 0 ? bowMm / bowsMm : (to - from) / ofMm;
    const guess = span.guess.slice(Math.floor((from / ofMm) * last), Math.ceil((to / ofMm) * last) + 1);
    const part = { ...span, a: ends[i] as RodEnd, b: ends[i + 1] as RodEnd, guess, tautMm: to - from - bowMm };
    return { span: part, lengthMm: to - from + share * (lengthMm - ofMm) };
  });
}

/** A hold as it is told: a locked stretch is none, what stands on it is. */
function toldHolds(station: Station): readonly Station[] {
  return station.ofLock === undefined ? [station] : (station.within ?? []);
}

/** How much of a route stays as it lies, mm. */
export function lockedLengthMm(route: Route): number {
  return locksOf(route).reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
}

/** Where along a route its locked stretches lie, mm from the tail of END A. */
function locksOf(route: Route): { fromMm: number; toMm: number; curve: CubicCurve }[] {
  let fromMm = 0;
  return route.ways.flatMap((way, i) => {
    const begin = fromMm;
    fromMm += pathLengthMm(way.path);
    const locked = i === 0 ? undefined : route.stations[i - 1]?.locked;
    return locked === undefined ? [] : [{ fromMm: begin, toMm: fromMm, curve: locked.curve }];
  });
}

/** mm. Stretches shorter than this are the clamp itself. */
const MIN_SPAN_MM = 0.01;

function cutsOf(route: Route, proposed: readonly ProposedClamp[]): { alongMm: number; station: Station }[] {
  const cuts: { alongMm: number; station: Station }[] = [];
  let along = 0;
  route.ways.forEach((way, i) => {
    along += pathLengthMm(way.path);
    const station = route.stations[i];
    if (station !== undefined && station.kind !== 'waypoint') cuts.push({ alongMm: along, station });
  });
  for (const clamp of proposed) {
    const pose = poseOnRoute(route, clamp.alongMm);
    cuts.push({ alongMm: clamp.alongMm, station: { id: clamp.id, kind: 'clamp', proposed: true, pose } });
  }
  return cuts.sort((x, y) => x.alongMm - y.alongMm);
}

/** Where the route is at a length from its start, mm. */
export function poseOnRoute(route: Route, alongMm: number): Pose {
  const { way, withinMm } = wayAt(route, alongMm);
  return poseOnPath(way.path, withinMm);
}

function wayAt(route: Route, alongMm: number): { way: Way; withinMm: number } {
  let start = 0;
  for (const way of route.ways) {
    const length = pathLengthMm(way.path);
    if (alongMm <= start + length) return { way, withinMm: Math.max(0, alongMm - start) };
    start += length;
  }
  const last = route.ways[route.ways.length - 1] as Way;
  return { way: last, withinMm: pathLengthMm(last.path) };
}

function sampleRoute(route: Route, fromMm: number, toMm: number): Pose[] {
  const poses: Pose[] = [];
  let start = 0;
  for (const way of route.ways) {
    const length = pathLengthMm(way.path);
    const from = Math.max(fromMm - start, 0);
    const to = Math.min(toMm - start, length);
    if (to > from) poses.push(...sampleWay(way, from, to, GUESS_STEP_MM).slice(poses.length === 0 ? 0 : 1));
    start += length;
  }
  return poses;
}

function turningOf(poses: readonly Pose[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < poses.length; i++)
    sum += angleBetween((poses[i] as Pose).direction as Vec3, (poses[i + 1] as Pose).direction as Vec3);
  return sum;
}
