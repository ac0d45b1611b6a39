import { partOf, type Watch } from '../../base/watch.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { hasCharacter } from '../character/character.ts';
import type { Effort } from '../search/problem.ts';
import { type Attempt, BLIND, givesUpCharacterAlone, HALF_CLEARANCE, LEAST, LITTLE_CLEARANCE } from './attempts.ts';
import { type FieldsOfRun, fieldsOfRun } from './fieldOfRun.ts';
import { isAtMostSlack, lacksAtMostSlack, lacksOf } from './lacksOf.ts';
import type { LayContext } from './layContext.ts';
import { withLessSlack } from './lessSlack.ts';
import { routeRun } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import type { Tried } from './tried.ts';
import { tryAttempt } from './tryAttempt.ts';

/**
 * Goes down the ladder until an attempt finds a hose; what only the service asks is given up once more to see whether that mends a
 * fault. Rungs that hardly find anything are passed over: those that ask less where a glance finds no way for the
 * least that can be asked, and the look with all means where `isFarFromAWay`. Of a hose that lacks more than
 * slack that is given up last, where it lacks nothing else then.
 */
export function downTheLadder(
  attempts: readonly Attempt[],
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  watch: Watch,
): Tried | undefined {
  const fields = fieldsOfRun(context, setting, others);
  let best: Tried | undefined;
  let isShut: boolean | undefined;
  for (const [i, attempt] of attempts.entries()) {
    if (givesUpCharacterAlone(attempt) && !hasCharacter(setting.character)) continue;
    if (best !== undefined && !givesUpCharacterAlone(attempt)) continue;
    const part = partOf(watch, i / attempts.length, (i + 1) / attempts.length);
    if (asksLess(attempt) || attempt.thorough === true) isShut ??= !hasWay(setting, fields, LEAST, 'glance', part);
    // Where the least that can be asked finds no way, nothing between finds one, but all means may yet.
    if (isShut === true && attempt.thorough !== true && attempt !== BLIND) continue;
    if (isShut === false && attempt.thorough === true && isFarFromAWay(setting, fields, part)) continue;
    const candidate = tryAttempt(context, setting, others, attempt, part, fields);
    if (candidate === undefined) continue;
    const tried = { candidate, attempt };
    if (best === undefined || isNearerClean(setting, tried, best)) best = tried;
    if (!mayGiveUpMore(setting, tried)) break;
  }
  if (best === undefined || lacksAtMostSlack(setting, best)) return best;
  return withLessSlack(context, setting, others, best, watch, fields) ?? best;
}

/** Whether of two hoses the first lacks nothing and the second something, or at most slack and the second more, or, both lacking more, it has less fault. */
function isNearerClean(setting: RunSetting, tried: Tried, than: Tried): boolean {
  const [has, had] = [lacksOf(setting, tried), lacksOf(setting, than)];
  if (had.length === 0 || has.length === 0) return had.length > 0;
  if (isAtMostSlack(had)) return false;
  return isAtMostSlack(has) || tried.candidate.judgement.fault < than.candidate.judgement.fault;
}

function asksLess({ clearanceShare, tailShare, blind }: Attempt): boolean {
  return (clearanceShare < 1 || tailShare < 1) && blind !== true;
}

/**
 * Whether a little of the clearances lets a glance through and half of them nothing: then a quick look seldom misses a way for
 * want of looking, and all of them seldom let anything through.
 */
function isFarFromAWay(setting: RunSetting, fields: FieldsOfRun, watch: Watch): boolean {
  return (
    hasWay(setting, fields, LITTLE_CLEARANCE, 'glance', watch) &&
    !hasWay(setting, fields, HALF_CLEARANCE, 'quick', watch)
  );
}

/** Whether a search that asks no more than an attempt, and nothing for the service, finds any way. */
function hasWay(setting: RunSetting, fields: FieldsOfRun, attempt: Attempt, effort: Effort, watch: Watch): boolean {
  const asked = { ...setting, characterAsked: false };
  const tailMm = attempt.tailShare * setting.tailMm;
  const { led } = fields(attempt.clearanceShare);
  return routeRun(asked, led, setting.minRadiusMm, tailMm, 1, effort, watch).routes.length > 0;
}

/** A hose that is not clean under what its service asks may be so without; a drain is not. */
function mayGiveUpMore(setting: RunSetting, tried: Tried): boolean {
  const { character } = setting;
  const asks = tried.attempt.givesUpCharacter !== true && hasCharacter(character) && character.fall === undefined;
  return asks && lacksOf(setting, tried).length > 0;
}
