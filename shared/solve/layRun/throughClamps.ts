import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { triple } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { Support } from '../../document/project/schema.ts';
import type { RunField } from '../bay/runField.ts';
import type { Candidate } from './candidate.ts';
import type { TrialRange } from './findShape.ts';
import { missingMm, slackOf } from './lacksOf.ts';
import type { Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { liveMmOf } from './tautLiveMm.ts';
import { tautRoute } from './tautRoute.ts';

/** What a hose with proposed clamps is let lie in anew. */
export interface ClampedIn {
  readonly setting: RunSetting;
  /** what it was judged against */
  readonly field: RunField;
  /** the hose that lies best along a route that is taut */
  lie(route: Route, range: TrialRange): Candidate | undefined;
  /** the same hose as it is told */
  fine(candidate: Candidate): Candidate;
}

/**
 * A clean hose that clamps are proposed for, as it is once they are put: pulled taut it is stopped by them as well, so its slack
 * is over the shortest way through them. One that has not the wanted slack then is laid anew through them, as it is where they are
 * stated, and again where that asks for more clamps; where it does not lie clean so with more slack, it is as much longer along the way
 * that it came, with the same clamps; where that is not clean either, it stays as it came, with the slack that it truly has.
 */
export function throughClamps(among: ClampedIn, found: Candidate, watch: Watch, mostRounds = MOST_ROUNDS): Candidate {
  const { setting, field } = among;
  if (found.clamps.length === 0 || found.judgement.fault > 0 || isClampedTaut(found)) return found;
  const route = tautThroughHolds(setting, found.shape, field, watch, 'quick');
  if (route === undefined) return found;
  const told = overTaut(found, route);
  if (missingMm(setting, told) === 0) return told;
  for (const range of ['plain', 'snug'] as const) {
    const held = among.lie(route, range);
    const asGood = held?.judgement.fault === 0 && held.judgement.regret <= found.judgement.regret;
    if (!asGood || slackOf(held) <= slackOf(told)) continue;
    const fine = among.fine(held);
    return mostRounds > 1 ? throughClamps(among, fine, watch, mostRounds - 1) : fine;
  }
  return longer(among, told, watch) ?? told;
}

/** The same hose with the same clamps as much longer as it lacks of the wanted slack; nothing where it does not lie clean so. */
function longer({ setting, field, fine }: ClampedIn, told: Candidate, watch: Watch): Candidate | undefined {
  const more = fine({ ...told, liveMm: wantedMm(setting, told), look: 'rough' });
  if (more.judgement.fault > 0 || more.judgement.regret > told.judgement.regret) return undefined;
  const route = tautThroughHolds(setting, more.shape, field, watch, 'quick');
  if (route === undefined) return undefined;
  const lengthened = overTaut(more, route);
  return slackOf(lengthened) > slackOf(told) ? lengthened : undefined;
}

/** A hose with its slack over a way drawn taut through what holds it, which is no shorter than the way without clamps. */
function overTaut(candidate: Candidate, route: Route): Candidate {
  const tautLiveMm = Math.min(candidate.shape.liveLengthMm, Math.max(candidate.tautLiveMm, liveMmOf(route)));
  return { ...candidate, tautLiveMm };
}

function wantedMm({ slack }: RunSetting, { tautLiveMm }: Candidate): number {
  return tautLiveMm * (1 + slack);
}

/** Each round may ask for more clamps; more rounds than this were never seen. */
const MOST_ROUNDS = 3;

/** Whether its clamps stand on the taut way itself, which goes through them as it is. */
function isClampedTaut({ clamps, route, tautLiveMm }: Candidate): boolean {
  return liveMmOf(route) <= tautLiveMm + SAME_POINT_MM && clamps.every(({ held }) => held === undefined);
}

/** A shape's line drawn taut through all that holds it, what is only proposed too; undefined where a line of arcs along it is not clear. */
export function tautThroughHolds(
  setting: RunSetting,
  shape: Shape,
  field: RunField,
  watch: Watch,
  effort: 'quick' | 'normal' = 'normal',
): Route | undefined {
  const supports = shape.holds.map(
    ({ id, kind, pose }): Support => ({ id, kind, point: triple(pose.point), axis: triple(pose.direction) }),
  );
  const route = tautRoute({ ...setting, supports }, field, shape, watch, effort);
  if (route === undefined) return undefined;
  const isProposed = (id: string): boolean => shape.holds.some((hold) => hold.id === id && hold.proposed);
  return { ...route, stations: route.stations.map((s) => ({ ...s, proposed: isProposed(s.id) })) };
}
