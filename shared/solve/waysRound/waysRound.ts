import { distance, type Vec3 } from '../../base/vec3.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { openAttempt } from '../layRun/attemptRoom.ts';
import { EVERYTHING } from '../layRun/attempts.ts';
import { distinctRoutes } from '../layRun/distinctRoutes.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { layWell } from '../layRun/layWell.ts';
import { runSetting } from '../layRun/runLimits.ts';

/** How many ways are told at most; a hand can weigh no more. */
export const MOST_WAYS = 5;
/** Over the hose's least radius: among ways of a larger one there are others sometimes, and they leave a relaxed hose room. */
const GENTLER = 1.3;
/** A way longer than so many times the shortest, and then this much, mm, is no choice for a builder. */
const LONGEST = 2.5;
const LONGEST_MORE_MM = 300;

/**
 * One run laid along each way found that passes other sides of things, at most `MOST_WAYS`: those that lie clean
 * first, the shorter before the longer. Held by clamps or pass-throughs, a run goes one way.
 * others: hoses that lie already. Which sides differ is shown by straight threads (`goTheSameSides`), so two ways that only
 * a longer thread would join may both be told. None where no way was found. The same input gives the same answer.
 */
export function waysRound(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay[] {
  const setting = runSetting(context.project, resolved);
  const room = openAttempt(context, setting, others, EVERYTHING, partOf(watch, 0, 0.05));
  if (room === undefined) return [];
  const close = room.routes(setting.minRadiusMm, MOST_WAYS, 'normal', partOf(watch, 0.05, 0.4));
  const gentle = room.routes(setting.minRadiusMm * GENTLER, MOST_WAYS, 'quick', partOf(watch, 0.4, 0.6));
  const distinct = distinctRoutes([...close, ...gentle], room.led);
  const longestMm = LONGEST * (distinct[0]?.lengthMm ?? 0) + LONGEST_MORE_MM;
  const ways = distinct.filter(({ lengthMm }) => lengthMm <= longestMm).slice(0, MOST_WAYS);
  const lays = ways.flatMap((way, i) => {
    stopIfCancelled(watch);
    const part = partOf(watch, 0.6 + (0.4 * i) / ways.length, 0.6 + (0.4 * (i + 1)) / ways.length);
    part.report({ fraction: 0, doing: `letting the hose lie on way ${i + 1} of ${ways.length}` });
    const rough = room.lie([way], [way], part);
    const candidate = rough && room.told(rough, part);
    return candidate === undefined
      ? []
      : [layWell(context, setting, others, { candidate, startedAt: watch.now() }, part)];
  });
  const isClean = (lay: Lay): number => (lay.outcome === 'laid' ? 0 : 1);
  return lays.sort((p, q) => isClean(p) - isClean(q) || p.cutLengthMm - q.cutLengthMm);
}

/**
 * The place of a hose that is furthest from all of the others, mm: a waypoint there tells it from them. Undefined where
 * there are no others.
 */
export function apartFrom(lay: Lay, others: readonly Lay[]): Vec3 | undefined {
  if (others.length === 0) return undefined;
  const gap = (p: Vec3): number =>
    Math.min(...others.flatMap((other) => other.centreline.points.map((q) => distance(p, q))));
  let best: { readonly point: Vec3; readonly gapMm: number } | undefined;
  for (const point of lay.centreline.points) {
    const gapMm = gap(point);
    if (best === undefined || gapMm > best.gapMm) best = { point, gapMm };
  }
  return best?.point;
}
