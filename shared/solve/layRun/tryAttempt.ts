import type { Watch } from '../../base/watch.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { openAttempt } from './attemptRoom.ts';
import { type Attempt, asksEveryClearance } from './attempts.ts';
import { betterOf, type Candidate } from './candidate.ts';
import { type FieldsOfRun, fieldsOfRun } from './fieldOfRun.ts';
import { hosesInTurn } from './hosesInTurn.ts';
import { missingMm } from './lacksOf.ts';
import type { LayContext } from './layContext.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * The best hose of one attempt: the first in turn (`hosesInTurn`) that lies clean with the slack that is wanted; of one that gives up
 * clearance anyway, the first without fault. Where there is none, the one that comes nearest to it. Nothing where no way was found.
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
  // How far the attempt is, is told by what is looked for in turn.
  const silent: Watch = { ...watch, report: () => undefined };
  const lacksSlack = (hose: Candidate): boolean => asksEveryClearance(attempt) && missingMm(setting, hose) > 0;
  let best: Candidate | undefined;
  for (const found of hosesInTurn(room, attempt, context.near !== undefined, watch)) {
    if (found === undefined) continue;
    const hose = found.judgement.fault > 0 ? found : room.told(found, silent);
    if (hose.judgement.fault === 0 && !lacksSlack(hose)) return hose;
    best = nearerClean(setting, best, hose);
  }
  return best === undefined || best.judgement.fault === 0 ? best : room.told(best, silent);
}

/** mm. So much less of the wanted slack is worth a worse shape. */
const WORTH_MM = 1;

/** Of two hoses that lack something the one that lacks less: of two without fault, of the wanted slack. */
function nearerClean(setting: RunSetting, a: Candidate | undefined, b: Candidate): Candidate {
  if (a === undefined) return b;
  const lessMm = missingMm(setting, a) - missingMm(setting, b);
  const areFaultless = a.judgement.fault === 0 && b.judgement.fault === 0;
  if (areFaultless && Math.abs(lessMm) > WORTH_MM) return lessMm > 0 ? b : a;
  return betterOf(a, b) as Candidate;
}
