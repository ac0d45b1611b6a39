import { partOf, type Watch } from '../../base/watch.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type AttemptRoom, openAttempt } from './attemptRoom.ts';
import type { Attempt } from './attempts.ts';
import { betterOf, type Candidate } from './candidate.ts';
import { distinctRoutes } from './distinctRoutes.ts';
import { type FieldsOfRun, fieldsOfRun } from './fieldOfRun.ts';
import { findAsWished } from './findAsWished.ts';
import type { LayContext } from './layContext.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { type ClampedIn, throughClamps } from './throughClamps.ts';

/** How many ways round things are followed up. */
const WAYS = 3;
/** A relaxed hose bends tighter somewhere than the arcs it was led along; routes of a larger radius leave it room. */
const GENTLER = 1.3;
const GENTLEST = 1.6;

/**
 * The best hose of one attempt: along the shortest way first; where that lies clean but not as its service wishes, along a
 * few others; where it does not lie clean, along gentler ways and on other sides of things. Nothing where no way was found.
 * fields: those of the run, where other attempts at it share them.
 */
export function tryAttempt(
  context: LayContext,
  run: RunSetting,
  others: TubeField,
  attempt: Attempt,
  watch: Watch,
  fields: FieldsOfRun = fieldsOfRun(context, run, others),
): Candidate | undefined {
  const setting = attempt.givesUpCharacter === true ? { ...run, characterAsked: false } : run;
  const room = openAttempt(context, setting, others, attempt, watch, fields);
  if (room === undefined) return undefined;
  const found = findInRoom(room, attempt, context.near === undefined, watch);
  if (found === undefined) return undefined;
  const clampedIn: ClampedIn = {
    setting,
    field: fields(attempt.clearanceShare).asked,
    lie: (route, range) => room.lie([route], [route], watch, range),
    fine: (candidate) => room.fine(candidate, watch),
  };
  return throughClamps(clampedIn, room.fine(found, watch), watch);
}

function findInRoom(room: AttemptRoom, attempt: Attempt, isAnywhere: boolean, watch: Watch): Candidate | undefined {
  const { minRadiusMm } = room.setting;
  const effort = attempt.thorough === true && isAnywhere ? 'normal' : 'quick';
  const shortest = room.routes(minRadiusMm, 1, effort, partOf(watch, 0, 0.3));
  if (shortest.length === 0) return undefined;
  const isQuickLook = attempt.brief === true || attempt.blind === true;
  const along = room.lie(shortest, shortest, partOf(watch, 0.3, 0.4), isQuickLook ? 'all' : 'plain');
  if (along?.judgement.content === true || attempt.brief === true) return along;
  if (along?.judgement.fault === 0) return findAsWished(room, along, shortest, watch);
  const beside = findBeside(room, along, shortest, partOf(watch, 0.4, 0.5));
  if (beside?.judgement.fault === 0 || attempt.keepsItsSides === true) return beside;
  return findOnOtherSides(room, beside, shortest, partOf(watch, 0.5, 1));
}

/**
 * Where the hose does not lie clean along the shortest way: a gentler way, which leaves it room and mostly goes the same sides, with
 * clamps where it needs them.
 */
function findBeside(
  room: AttemptRoom,
  along: Candidate | undefined,
  shortest: readonly Route[],
  watch: Watch,
): Candidate | undefined {
  let best = along;
  const routes = [...shortest];
  for (const [i, times] of [GENTLER, GENTLEST].entries()) {
    const part = partOf(watch, 0.5 * i, 0.5 * (i + 1));
    const gentle = room.routes(room.setting.minRadiusMm * times, 1, 'unkicked', partOf(part, 0, 0.4));
    routes.push(...gentle);
    best = betterOf(best, room.lie(gentle, shortest, partOf(part, 0.4, 0.6), 'plain'));
    if (best?.judgement.fault === 0) break;
    best = betterOf(best, room.lie(routes, shortest, partOf(part, 0.6, 1), 'snug'));
    if (best?.judgement.fault === 0) break;
  }
  return best;
}

/** Where no gentler way beside the shortest helped: gentler ways and those on other sides of things. */
function findOnOtherSides(
  room: AttemptRoom,
  beside: Candidate | undefined,
  shortest: readonly Route[],
  watch: Watch,
): Candidate | undefined {
  const { minRadiusMm } = room.setting;
  const sideRoutes = (radiusMm: number, part: Watch): readonly Route[] =>
    room.routes(radiusMm, WAYS, radiusMm > minRadiusMm ? 'unkicked' : 'quick', part);
  const close = sideRoutes(minRadiusMm, partOf(watch, 0, 0.2));
  const gentle = sideRoutes(minRadiusMm * GENTLER, partOf(watch, 0.2, 0.6));
  // The close routes are looked for anew: mostly the first of them is the shortest again.
  const sides = distinctRoutes([...shortest, ...close], room.led);
  const best = betterOf(beside, room.lie([...sides, ...gentle], sides, partOf(watch, 0.6, 0.8)));
  if (best?.judgement.fault === 0) return best;
  const gentlest = sideRoutes(minRadiusMm * GENTLEST, partOf(watch, 0.8, 0.9));
  return betterOf(best, room.lie(gentlest, sides, partOf(watch, 0.9, 1)));
}
