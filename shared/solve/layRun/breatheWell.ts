import type { Watch } from '../../base/watch.ts';
import type { Breath } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { breathe } from './breathe.ts';
import type { Candidate } from './candidate.ts';
import { contactOfRun, IN_HAND_TO_BREATHE_MM, keptOfRun } from './contactOfRun.ts';
import { fieldOfRun } from './fieldOfRun.ts';
import { findShape } from './findShape.ts';
import { holdAt } from './holdAt.ts';
import { lacksAtMostSlack, lacksOf, missingMm, slackOf } from './lacksOf.ts';
import { bestHeldOfRoute, bestOfRoute, refined } from './letLie.ts';
import type { Route } from './routeRun.ts';
import { nearestClockOf, type RunSetting } from './runSetting.ts';
import { liveMmOf } from './tautLiveMm.ts';
import { type ClampedIn, throughClamps } from './throughClamps.ts';

/** A hose that lacks nothing, or slack alone, with how it lies at the lengths that pressure gives it. */
export interface Breathing {
  readonly candidate: Candidate;
  readonly breathing: readonly Breath[];
}

/**
 * What is tried on a hose that lacks slack, or goes taut or too near under pressure: a little more slack, and its swivel ends held a share of the
 * turn back from where the free hose drew them to where its way has them. (A hose that turned its own ends lies so evenly that
 * there is little bow left in it to give.) Before these, clamps that hold it further off; after them, clamps where it comes near.
 */
const TRIED = [
  { moreSlack: 0, back: 0.3 },
  { moreSlack: 0.015, back: 0 },
  { moreSlack: 0.03, back: 0 },
  { moreSlack: 0.03, back: 0.3 },
] as const;

/** So many clamps are put where it comes too near, one after the other. */
const MOST_HELD_MORE = 2;

/** mm. What going taut or lacking slack counts for over the length that is missing: it is worse than coming near. */
const TOO_SHORT_MM = 100;

/**
 * A hose that lacks nothing at rest, or slack alone, under pressure, and where it lacks that, goes taut or comes nearer to something than is
 * asked, the best of a few others on the same way that are as clean: never worse than it came. A hose already cut is what it is.
 */
export function breatheWell(
  { project, bay }: { readonly project: Project; readonly bay: BayIndex },
  setting: RunSetting,
  candidate: Candidate,
  others: TubeField,
  watch: Watch,
): Breathing {
  const contact = contactOfRun(bay, others, setting);
  const breathOf = (c: Candidate): Breathing => ({
    candidate: c,
    breathing: breathe(project, setting, c, contact, bay, others, watch),
  });
  let best = breathOf(candidate);
  if (faultOf(setting, best) === 0 || setting.cutLengthMm !== undefined) return best;
  const field = fieldOfRun({ project, bay }, setting, others);
  const { route, clamps, tautLiveMm } = candidate;
  const kept = keptOfRun({ project, bay }, setting, others, 1, IN_HAND_TO_BREATHE_MM);
  const surroundings = { field, contact, kept, tautLiveOf: () => tautLiveMm, mayTouch: true };
  const step = slackOf(candidate) - setting.slack;
  const clampedIn: ClampedIn = {
    setting,
    field,
    lie: (way, range) => findShape(setting, [way], { ...surroundings, tautLiveOf: liveMmOf }, watch, range),
    fine: (c) => refined(setting, c, surroundings, watch),
  };
  const heldFurther = (): Candidate | undefined => bestHeldOfRoute(setting, route, [step], surroundings, watch);
  const asTried = ({ moreSlack, back }: (typeof TRIED)[number]): Candidate | undefined => {
    if (back > 0 && !setting.a.turns && !setting.b.turns) return undefined;
    const as = back > 0 ? turnedBack(setting, candidate, back) : { setting, route };
    return bestOfRoute(as.setting, as.route, clamps, [step + moreSlack], surroundings, watch);
  };
  let heldFrom: Candidate | undefined;
  const heldThere = (): Candidate | undefined => {
    if (heldFrom === best.candidate || best.breathing.some(({ taut }) => taut)) return undefined;
    heldFrom = best.candidate;
    const more = holdAt(setting, best.candidate, nearestAtMm(best));
    const { route: way, liveMm } = best.candidate;
    const slack = liveMm / tautLiveMm - 1 - setting.slack;
    return more && bestOfRoute(setting, way, more, [slack], surroundings, watch);
  };
  // What only the service wishes is given up for a hose that is long enough.
  const isAsClean = (c: Candidate): boolean =>
    lacksAtMostSlack(setting, { candidate: c }) &&
    (lacksOf(setting, best).length > 0 || c.judgement.regret <= candidate.judgement.regret);
  const isHeld = clamps.some(({ held }) => held !== undefined);
  const tries = [
    ...(isHeld ? [heldFurther] : []),
    ...TRIED.map((tried) => () => asTried(tried)),
    ...Array.from({ length: MOST_HELD_MORE }, () => heldThere),
  ];
  for (const tryOther of tries) {
    const tried = tryOther();
    if (tried === undefined || !isAsClean(tried)) continue;
    const other = throughClamps(clampedIn, tried, watch);
    if (!isAsClean(other)) continue;
    const breathed = breathOf(other);
    if (faultOf(setting, breathed) < faultOf(setting, best)) best = breathed;
    if (faultOf(setting, best) === 0) break;
  }
  return best;
}

/** The run with its swivel ends held between the clocks that the free hose came to and those that its way has. */
function turnedBack(
  setting: RunSetting,
  { route, shape }: Candidate,
  back: number,
): { setting: RunSetting; route: Route } {
  const between = (from: number, to: number): number =>
    from + back * Math.atan2(Math.sin(to - from), Math.cos(to - from));
  const clockARad = nearestClockOf(setting.a, between(shape.clockARad, route.clockARad));
  const clockBRad = nearestClockOf(setting.b, between(shape.clockBRad, route.clockBRad));
  const held = {
    ...setting,
    a: { ...setting.a, turns: false, clockRad: clockARad },
    b: { ...setting.b, turns: false, clockRad: clockBRad },
  };
  return { setting: held, route: { ...route, clockARad, clockBRad } };
}

/** Where along the hose, as it lies at rest, one of its breaths comes nearest to something, mm from shoulder A. */
function nearestAtMm({ candidate, breathing }: Breathing): number {
  const over = ({ tightest }: Breath): number =>
    tightest === undefined ? Infinity : tightest.clearanceMm - tightest.requiredMm;
  const worst = breathing.reduce((a, b) => (over(b) < over(a) ? b : a));
  return ((worst.tightest?.at.arcLengthMm ?? 0) * candidate.shape.liveLengthMm) / worst.liveLengthMm;
}

/** How much room or length is missing at its worst, mm; 0 where nothing is. */
function faultOf(setting: RunSetting, { candidate, breathing }: Breathing): number {
  const shortMm = missingMm(setting, candidate);
  return Math.max(
    shortMm > 0 ? TOO_SHORT_MM + shortMm : 0,
    ...breathing.map(({ taut, tightest }) => {
      if (taut) return TOO_SHORT_MM;
      return tightest === undefined ? 0 : Math.max(0, tightest.requiredMm - tightest.clearanceMm);
    }),
  );
}
