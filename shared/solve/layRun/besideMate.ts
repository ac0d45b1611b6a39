import { addScaled, anySquareTo, cross, distance, scale, sub, unit, type Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { Project } from '../../document/project/schema.ts';
import { connectionPath, connectPoses } from '../../geometry/arcLineConnector.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { carryWithoutTwist } from '../../geometry/twistFreeFrame.ts';
import type { RunField } from '../bay/runField.ts';
import type { Tube, TubeField } from '../bay/tubeField.ts';
import type { EndChoice, Way } from '../search/problem.ts';
import { searchWays } from '../search/searchWays.ts';
import type { Route } from './routeRun.ts';
import { clocksOf, type RunSetting, searchEnd, tailPose } from './runSetting.ts';

/** A hose of the same bundle that lies already. */
export interface Mate {
  readonly run: string;
  readonly hose: Tube;
  /** mm, hose to hose */
  readonly gapMm: number;
}

/** Hoses of a run's bundle among what is laid already; ends are tubes too, the hose is the one with most points. */
export function matesAmong(project: Project, run: string, others: TubeField): Mate[] {
  const runs = [...new Set(others.tubes.filter((t) => t.standing !== true).map((t) => t.run))];
  return runs.flatMap((other) => {
    const bundle = bundleOf(project, run, other);
    if (bundle === undefined) return [];
    const tubes = others.tubes.filter((t) => t.run === other);
    const hose = tubes.reduce((a, b) => (b.points.length > a.points.length ? b : a));
    return [{ run: other, hose, gapMm: bundle.gapMm ?? 0 }];
  });
}

/** mm. Hoses are tied at least so often along the part where they lie together (common practice, no source). */
const TIE_SPACING_MM = 200;
/** mm. Less than this side by side is not worth a tie. */
const LEAST_TOGETHER_MM = 60;
/** mm. Room left between hoses at a tie over what the bundle asks: what the tie's own strap takes up. */
const STRAP_MM = 1;
/** Sides of the mate that are tried. */
const SIDES = 12;
/** Parts of the way both have in common over which they are tied, most first. */
const PARTS = [
  [0.1, 0.9],
  [0.2, 0.8],
  [0.2, 0.65],
  [0.35, 0.8],
  [0.3, 0.7],
  [0.4, 0.6],
] as const;
/** Of the sides of one part, so many are followed up. */
const SIDES_TRIED = 3;

/**
 * Routes on which a run lies beside another hose of its bundle: at the bundle's gap to one side of it, tied to it along
 * the part of the way that both have in common. The ties are proposed clamps; between them the hose is led as its mate lies. Best
 * first, none over mostMm, tail to tail; none where the two go different ways or no side is clear. tailMm: straight
 * tail at both ends.
 */
export function* besideMate(
  setting: RunSetting,
  mate: Mate,
  field: RunField,
  tailMm: number,
  mostMm: number,
  watch: Watch,
): Generator<Route> {
  const guide = guideAlong(setting, mate);
  if (guide === undefined) return;
  for (const [from, to] of PARTS) {
    const rows = Array.from({ length: SIDES }, (_, k) =>
      tiesOn(guide, mate, setting, from, to, (2 * Math.PI * k) / SIDES),
    )
      .filter(({ ties }) => ties.length > 1 && ties.every(({ point: [x, y, z] }) => field.marginMm(x, y, z, 0) >= 0))
      .map((row) => ({ row, lengthMm: lengthThrough(setting, row.ties, tailMm) }))
      .filter(({ lengthMm }) => lengthMm <= mostMm)
      .sort((p, q) => p.lengthMm - q.lengthMm)
      .slice(0, SIDES_TRIED);
    for (const { row } of rows) {
      const route = routeThrough(setting, row, field, tailMm, watch);
      if (route !== undefined && route.lengthMm <= mostMm) yield route;
    }
  }
}

/** Led along a wider radius than its own, since a relaxed hose bends tighter somewhere than its way. */
const GENTLER = 1.3;

/** The route from end to end through a row of ties: searched for at both ends, straight arcs from tie to tie. */
function routeThrough(
  setting: RunSetting,
  { ties, betweenMm }: TieRow,
  field: RunField,
  tailMm: number,
  watch: Watch,
): Route | undefined {
  const look = (from: EndChoice, to: EndChoice): Way | undefined =>
    searchWays(
      {
        from,
        to,
        minRadiusMm: GENTLER * setting.minRadiusMm,
        field,
        ways: 1,
        seed: setting.seed,
        effort: 'glance',
        withoutNearMiss: true,
      },
      watch,
    ).ways[0];
  const first = look(searchEnd(setting.a, 'a', tailMm, field), { kind: 'held', pose: ties[0] as Pose });
  if (first === undefined) return undefined;
  const between = ties.slice(1).map((to, i) => wayBetween(ties[i] as Pose, to, setting.minRadiusMm));
  const last = look({ kind: 'held', pose: ties[ties.length - 1] as Pose }, searchEnd(setting.b, 'b', tailMm, field));
  if (last === undefined || between.some((way) => way === undefined)) return undefined;
  const ways = [first, ...(between as Way[]), last];
  return {
    ways,
    stations: ties.map((pose, i) => ({ id: `tie-${i + 1}`, kind: 'clamp', proposed: true, pose })),
    clockARad: setting.a.turns ? first.fromClockRad : setting.a.clockRad,
    clockBRad: setting.b.turns ? last.toClockRad : setting.b.clockRad,
    lengthMm: ways.reduce((sum, w) => sum + w.lengthMm, 0),
    tailMm: { a: tailMm, b: tailMm },
    tiedSlackMm: ways.map((way, i) => {
      const mm = betweenMm[i - 1];
      return mm === undefined ? undefined : Math.max(0, mm - way.lengthMm);
    }),
  };
}

/** A guess to relax from, not looked at for clearance: the hose comes to lie like its mate, and is judged then. */
function wayBetween(from: Pose, to: Pose, radiusMm: number): Way | undefined {
  const connection = connectPoses(from, to, radiusMm);
  if (connection === undefined) return undefined;
  const path = connectionPath(from, to, connection);
  return { path, lengthMm: connection.lengthMm, fromClockRad: 0, toClockRad: 0, leastMarginMm: 0 };
}

/** The mate's way from where it is nearest to END A to where it is nearest to END B, with a direction to its side. */
interface Guide {
  readonly points: readonly Vec3[];
  readonly tangents: readonly Vec3[];
  readonly sides: readonly Vec3[];
  readonly lengthMm: number;
}

function guideAlong(setting: RunSetting, { hose }: Mate): Guide | undefined {
  const nearest = (to: Vec3): number =>
    hose.points.reduce((best, p, i) => (distance(p, to) < distance(hose.points[best] as Vec3, to) ? i : best), 0);
  const [from, to] = [nearest(setting.a.port.seatPoint), nearest(setting.b.port.seatPoint)];
  const points = from <= to ? hose.points.slice(from, to + 1) : hose.points.slice(to, from + 1).reverse();
  const lengthMm = chordsMm(points);
  if (points.length < 3 || lengthMm < LEAST_TOGETHER_MM) return undefined;
  const tangents = points.map((_, i) =>
    unit(sub(points[Math.min(points.length - 1, i + 1)] as Vec3, points[Math.max(0, i - 1)] as Vec3)),
  );
  return { points, tangents, sides: carryWithoutTwist(points, tangents, anySquareTo(tangents[0] as Vec3)), lengthMm };
}

/** Places to tie a hose to its mate, and how long it is from each to the next if it lies like its mate, mm. */
interface TieRow {
  readonly ties: readonly Pose[];
  readonly betweenMm: readonly number[];
}

/** Evenly along a part of the guide, to one side of it. */
function tiesOn(
  guide: Guide,
  { hose, gapMm }: Mate,
  { outsideRadiusMm }: RunSetting,
  from: number,
  to: number,
  sideRad: number,
): TieRow {
  const togetherMm = (to - from) * guide.lengthMm;
  if (togetherMm < LEAST_TOGETHER_MM) return { ties: [], betweenMm: [] };
  const offMm = outsideRadiusMm + hose.radiusMm + gapMm + STRAP_MM;
  const beside = guide.points.map((point, k) => {
    const direction = guide.tangents[k] as Vec3;
    const first = guide.sides[k] as Vec3;
    const side = addScaled(scale(first, Math.cos(sideRad)), cross(direction, first), Math.sin(sideRad));
    return { point: addScaled(point, side, offMm), direction };
  });
  const spaces = Math.max(1, Math.ceil(togetherMm / TIE_SPACING_MM));
  const at = Array.from({ length: spaces + 1 }, (_, i) =>
    Math.round((from + ((to - from) * i) / spaces) * (guide.points.length - 1)),
  );
  return {
    ties: at.map((k) => beside[k] as Pose),
    betweenMm: at.slice(1).map((k, i) => chordsMm(beside.slice(at[i] as number, k + 1).map((p) => p.point))),
  };
}

function chordsMm(points: readonly Vec3[]): number {
  return points.slice(1).reduce((sum, p, i) => sum + distance(p, points[i] as Vec3), 0);
}

/** Length of hose through a row of ties if nothing else stood in the way, mm. */
function lengthThrough(setting: RunSetting, ties: readonly Pose[], tailMm: number): number {
  const radiusMm = GENTLER * setting.minRadiusMm;
  const join = (from: Pose, to: Pose): number => connectPoses(from, to, radiusMm)?.lengthMm ?? Infinity;
  const fromEnd = (side: 'a' | 'b', tie: Pose): number =>
    Math.min(
      ...clocksOf(setting[side], CLOCKS).map((clockRad) => {
        const pose = tailPose(setting[side], side, tailMm, clockRad);
        return side === 'a' ? join(pose, tie) : join(tie, pose);
      }),
    );
  const togetherMm = ties.slice(1).reduce((sum, tie, i) => sum + join(ties[i] as Pose, tie), 0);
  return fromEnd('a', ties[0] as Pose) + togetherMm + fromEnd('b', ties[ties.length - 1] as Pose);
}

const CLOCKS = 8;
