import type { Watch } from '../../base/watch.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { openAttempt } from './attemptRoom.ts';
import { asksEveryClearance } from './attempts.ts';
import type { FieldsOfRun } from './fieldOfRun.ts';
import type { LayContext } from './layContext.ts';
import type { RunSetting } from './runSetting.ts';
import { throughClamps } from './throughClamps.ts';
import type { Tried } from './tried.ts';

/**
 * A near miss that keeps radius and clearance, and misses only its slack, instead of one that keeps its slack and goes through something: let
 * lie along the same way with less. Narrow places have room for a hose, and none for its slack. Nothing where less does not
 * help either, where the hose is cut already, or where clearance was given up.
 */
export function withLessSlack(
  context: LayContext,
  run: RunSetting,
  others: TubeField,
  { candidate, attempt }: Tried,
  watch: Watch,
  fields: FieldsOfRun,
): Tried | undefined {
  const asksAll = asksEveryClearance(attempt) && attempt.tailShare === 1;
  if (candidate.judgement.fault === 0 || !asksAll || run.cutLengthMm !== undefined) return undefined;
  const setting = attempt.givesUpCharacter === true ? { ...run, characterAsked: false } : run;
  const room = openAttempt(context, setting, others, attempt, watch, fields);
  const short = room?.lie([candidate.route], [candidate.route], watch, 'short');
  if (room === undefined || short?.judgement.fault !== 0) return undefined;
  const fine = room.fine(short, watch);
  if (fine.judgement.fault > 0) return undefined;
  const { asked } = fields(attempt.clearanceShare);
  const told = throughClamps({ setting, field: asked, lie: () => undefined, fine: (c) => c }, fine, watch);
  return { candidate: told, attempt };
}
