import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { hasCharacter } from '../character/character.ts';
import { ATTEMPTS, type Attempt, BLIND, EVERYTHING, LEAST, WITHOUT_CHARACTER } from './attempts.ts';
import { breatheWell } from './breatheWell.ts';
import { layBundled } from './bundled.ts';
import type { Candidate } from './candidate.ts';
import { contactOfRun } from './contactOfRun.ts';
import { fieldOfRun } from './fieldOfRun.ts';
import { withApart } from './givenUp.ts';
import type { LayContext } from './layContext.ts';
import { layOf } from './layOf.ts';
import { layWithoutHose } from './layWithoutHose.ts';
import { withReserve } from './reserve.ts';
import { routeRun } from './routeRun.ts';
import { runSetting } from './runLimits.ts';
import type { RunSetting } from './runSetting.ts';
import { tryAttempt } from './tryAttempt.ts';

export type { LayContext } from './layContext.ts';

/**
 * Lays one run: global search between the ends, relaxation of the hose along each way found, proposed clamps where it
 * will not keep clear by itself, and the measured result. others: hoses that are already laid. Always answers a lay:
 * `laid` when radius and clearance are kept; `near-miss` with its reason when the best found breaks something;
 * `no-way` when only a hose through the bay could be shown. The same input gives the same lay on every host.
 */
export function layRun(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith(ATTEMPTS, context, resolved, others, watch);
}

/** As `layRun`, but no room is given up where the run does not lie clean: `near-miss` or `no-way` then, and much sooner. */
export function layAsAsked(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith([EVERYTHING, WITHOUT_CHARACTER], context, resolved, others, watch);
}

/** As `layRun`, for a run known to find no way that keeps all that is asked, such as among fewer hoses: that is not looked for again. */
export function layWithLess(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  const less = ATTEMPTS.filter((attempt) => attempt !== EVERYTHING && attempt !== WITHOUT_CHARACTER);
  return layWith(less, context, resolved, others, watch);
}

function layWith(
  attempts: readonly Attempt[],
  context: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
  watch: Watch,
): Lay {
  const startedAt = watch.now();
  const setting = runSetting(context.project, resolved);
  const bundled = layBundled(context, setting, others, watch);
  if (bundled.kind === 'tied')
    return layOf(context, setting, others, { candidate: bundled.candidate, startedAt }, watch);
  const best = bestAttempt(attempts, context, setting, others, watch);
  if (best === undefined) return layWithoutHose(context, setting, others, { lay: watch.now() - startedAt });
  const isFull = best.candidate.judgement.fault === 0 && best.attempt.clearanceShare === 1;
  const breathed = isFull
    ? breatheWell(context, setting, best.candidate, others, contactOfRun(context.bay, others, setting), watch)
    : {};
  const lay = layOf(context, setting, others, { ...best, ...breathed, startedAt }, watch);
  return bundled.kind === 'apart' ? withApart(lay, bundled.from) : lay;
}

interface Tried {
  readonly candidate: Candidate;
  readonly attempt: Attempt;
}

/** Goes down the ladder until an attempt finds a hose; what only the service asks is given up once more to see whether that mends a fault. */
function bestAttempt(
  attempts: readonly Attempt[],
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  watch: Watch,
): Tried | undefined {
  let best: Tried | undefined;
  let isShut: boolean | undefined;
  for (const [i, attempt] of attempts.entries()) {
    if (attempt === WITHOUT_CHARACTER && !hasCharacter(setting.character)) continue;
    if (best !== undefined && attempt !== WITHOUT_CHARACTER) continue;
    const part = partOf(watch, i / attempts.length, (i + 1) / attempts.length);
    // Where the least that can be asked finds no way, nothing between finds one.
    if (asksLess(attempt)) isShut ??= !hasAnyWay(context, setting, others, part);
    if (isShut === true && attempt !== BLIND) continue;
    const candidate = tryAttempt(context, setting, others, attempt, part);
    if (candidate === undefined) continue;
    if (best === undefined || candidate.judgement.fault < best.candidate.judgement.fault) best = { candidate, attempt };
    if (!mayGiveUpMore(setting, attempt, candidate)) break;
  }
  return best;
}

function asksLess({ clearanceShare, tailShare, blind }: Attempt): boolean {
  return (clearanceShare < 1 || tailShare < 1) && blind !== true;
}

/** Whether a search that asks the least finds any way at all. */
function hasAnyWay(context: LayContext, setting: RunSetting, others: TubeField, watch: Watch): boolean {
  const field = withReserve(fieldOfRun(context, setting, others, LEAST.clearanceShare));
  const asked = { ...setting, characterAsked: false };
  const tailMm = LEAST.tailShare * setting.tailMm;
  return routeRun(asked, field, setting.minRadiusMm, tailMm, 1, 'glance', watch).routes.length > 0;
}

/** A hose whose radius or clearance suffers under what its service asks may be better without; a drain is not. */
function mayGiveUpMore({ character }: RunSetting, attempt: Attempt, { judgement }: Candidate): boolean {
  const asks = attempt.givesUpCharacter !== true && hasCharacter(character) && character.fall === undefined;
  return asks && judgement.fault > 0;
}
