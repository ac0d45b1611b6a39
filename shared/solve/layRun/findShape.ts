import type { Watch } from '../../base/watch.ts';
import { segmentLengthMm } from '../../geometry/arcLinePath.ts';
import { type Candidate, worthAClamp } from './candidate.ts';
import { clampOnRoute } from './clampOnRoute.ts';
import { bestHeldOfRoute, bestOfRoute, isCrowded, type Surroundings } from './letLie.ts';
import { proposedIds } from './proposedIds.ts';
import type { Route, Station } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import type { ProposedClamp } from './spans.ts';

/**
 * Slack tried beyond the wanted one, as fractions added to it: a hose that would kink at 5 % may lie well at 7 %. `snug`
 * stays inside the handbook's 5 to 8 %; `loose` goes beyond, and the slack check says so. `wide` is for ports so near to each
 * other that the taut hose is bent to its limit all along: a free hose bends unevenly, and lies in such a place as a wider loop only.
 * `short` is for a hose whose clamps leave no room for the wanted slack: a near miss, with what it comes to.
 */
export const SLACK_STEPS = {
  snug: [0, 0.015, 0.03],
  loose: [0.05, 0.08, 0.12],
  wide: [0.2, 0.28, 0.38, 0.5, 0.65, 0.85],
  short: [-0.02, -0.035, -0.045],
} as const;

interface Trial {
  /** how many, where the hose goes furthest wrong; or where it would lean if it kept clear */
  readonly clamps: number | 'where it leans';
  readonly slack: keyof typeof SLACK_STEPS;
}

/**
 * Which trials: `plain` only those without a proposed clamp and with the handbook's slack, `snug` with clamps too, `short` only those
 * with less slack than is wanted.
 */
export type TrialRange = 'plain' | 'snug' | 'all' | 'short';

/** What is tried, in order of what a builder would rather have: few clamps and a snug hose before more of either. */
const TRIALS: readonly Trial[] = [
  { clamps: 0, slack: 'snug' },
  { clamps: 1, slack: 'snug' },
  { clamps: 'where it leans', slack: 'snug' },
  { clamps: 0, slack: 'loose' },
  { clamps: 'where it leans', slack: 'loose' },
  { clamps: 1, slack: 'loose' },
  { clamps: 2, slack: 'snug' },
  { clamps: 2, slack: 'loose' },
  { clamps: 3, slack: 'snug' },
];

/** What is tried where nothing else lies clean: by itself only where clamps of the user's leave no room. */
const SHORT_TRIALS: readonly Trial[] = [
  { clamps: 0, slack: 'short' },
  { clamps: 'where it leans', slack: 'short' },
];

/** The same where the shortest route is bent all along: a clamp in the middle of a bend widens nothing, more hose does. */
const BENT_TRIALS: readonly Trial[] = [
  { clamps: 0, slack: 'snug' },
  { clamps: 0, slack: 'loose' },
  { clamps: 0, slack: 'wide' },
  ...TRIALS.filter(({ clamps }) => clamps !== 0),
];
/** A route counts as bent all along when arcs of the least radius make up this share of it. */
const BENT_SHARE = 0.75;
/** Arcs of up to this many least radii are meant: routes are looked for with a little in hand. */
const BENT_RADIUS = 1.3;

/**
 * From routes, the shortest first, to the hose that lies best: each route is relaxed with growing slack, with its swivel ends free and then
 * held at the route's clock; if that does not keep radius and clearance, clamps are proposed one by one on the route where the hose
 * goes furthest wrong, or where the hose would lean if it kept clear. The first trial with a candidate that leaves nothing to wish for
 * wins; else the candidate with the least fault, then the least regret, which may be looked at roughly only where it is far from clean.
 */
export function findShape(
  setting: RunSetting,
  routes: readonly Route[],
  surroundings: Surroundings,
  watch: Watch,
  range: TrialRange = 'all',
): Candidate | undefined {
  let best: Candidate | undefined;
  const clamped = new Map(routes.map((route) => [route, ownClamps(setting, route)]));
  const crowded = new Set<readonly ProposedClamp[]>();
  const leastFault = new Map<Route, number>();
  const { shortest = routes[0] } = surroundings;
  const isBent = shortest !== undefined && isBentAllAlong(shortest, setting.minRadiusMm);
  const trials = [...(isBent ? BENT_TRIALS : TRIALS), ...SHORT_TRIALS].filter((t) =>
    isTried(setting, t, isBent && range !== 'short' ? 'all' : range),
  );
  for (const [i, trial] of trials.entries()) {
    // More slack than the handbook's is not worth what only the service wishes for.
    if (best?.judgement.fault === 0 && trial.slack !== 'snug') continue;
    watch.report({ fraction: i / trials.length, doing: 'letting the hose lie' });
    if (trial.clamps === 'where it leans') {
      for (const route of routes)
        best = worthAClamp(best, bestHeldOfRoute(setting, route, SLACK_STEPS[trial.slack], surroundings, watch));
      if (best?.judgement.content === true) return best;
      continue;
    }
    for (const [route, byCount] of clamped) {
      const clamps = byCount[trial.clamps];
      if (clamps === undefined || (isForMore(trial) && crowded.has(clamps))) continue;
      if (trial.slack === 'short' && range !== 'short' && !route.stations.some(holdsHose)) continue;
      const here = bestOfRoute(setting, route, clamps, SLACK_STEPS[trial.slack], surroundings, watch);
      if (here === undefined) continue;
      best = worthAClamp(best, here);
      if (isCrowded(setting, here)) crowded.add(clamps);
      const fewer = leastFault.get(route) ?? Number.POSITIVE_INFINITY;
      leastFault.set(route, Math.min(fewer, here.judgement.fault));
      // A clamp that made it worse leads nowhere.
      if (clamps.length > 0 && here.judgement.fault > fewer) continue;
      const more = byCount[trial.clamps + 1] ?? clampOnRoute(setting, route, clamps, here);
      if (more !== undefined) byCount[trial.clamps + 1] = more;
    }
    if (best?.judgement.content === true) return best;
  }
  return best;
}

/** Whether a trial gives more slack than a hose has that was crowded: of less it may lie well. */
function isForMore({ slack }: Trial): boolean {
  return slack === 'loose' || slack === 'wide';
}

function holdsHose({ kind, ofLock }: Station): boolean {
  return kind !== 'waypoint' && ofLock === undefined;
}

/** A hose already cut has no slack to choose. */
function isTried({ cutLengthMm }: RunSetting, { clamps, slack }: Trial, range: TrialRange): boolean {
  if (range === 'short') return slack === 'short' && cutLengthMm === undefined;
  if (slack === 'short' && clamps !== 0) return false;
  if (slack !== 'snug') return cutLengthMm === undefined && range === 'all';
  return clamps === 0 || range !== 'plain';
}

function isBentAllAlong({ ways }: Route, minRadiusMm: number): boolean {
  let bentMm = 0;
  let totalMm = 0;
  for (const segment of ways.flatMap(({ path }) => path.segments)) {
    const lengthMm = segmentLengthMm(segment);
    totalMm += lengthMm;
    if (segment.kind === 'arc' && segment.radiusMm <= minRadiusMm * BENT_RADIUS) bentMm += lengthMm;
  }
  return bentMm >= BENT_SHARE * totalMm;
}

/** By how many clamps there are: a route starts with none, or with those that belong to it. */
function ownClamps(setting: RunSetting, route: Route): (readonly ProposedClamp[] | undefined)[] {
  const { clampsAtMm = [] } = route;
  const byCount: (readonly ProposedClamp[] | undefined)[] = [];
  const ids = proposedIds(setting, route, [], clampsAtMm.length);
  byCount[clampsAtMm.length] = clampsAtMm.map((alongMm, i) => ({ id: ids[i] as string, alongMm }));
  return byCount;
}
