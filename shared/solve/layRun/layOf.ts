import { SAME_POINT_MM } from '../../base/tolerances.ts';
import type { Watch } from '../../base/watch.ts';
import type { Clearance, Lay } from '../../document/lay/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type Attempt, EVERYTHING, keepsAllAsked } from './attempts.ts';
import { breathe } from './breathe.ts';
import type { Breathing } from './breatheWell.ts';
import type { Candidate } from './candidate.ts';
import { contactOfRun } from './contactOfRun.ts';
import { givenUpOf } from './givenUp.ts';
import type { LayContext } from './layContext.ts';
import { measureLay } from './measureLay.ts';
import { type Pinch, pinchAt } from './pinchAt.ts';
import { noRoomForSlack, reasonOf, shortByMm } from './reasonOf.ts';
import type { RunSetting } from './runSetting.ts';
import { brokenByShape } from './shapeLine.ts';

/** A hose that was found, with how. */
export interface FoundHose {
  readonly candidate: Candidate;
  /** how it breathes, where that is known already */
  readonly breathing?: Breathing['breathing'];
  /** absent = it was made to keep everything, whether it does or not */
  readonly attempt?: Attempt;
  /** ms on the watch, since when it was looked for; absent = now */
  readonly startedAt?: number;
}

/** What is told of a hose: measured, judged, with its reason where it is not clean, breathed where it is. */
export function layOf(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  found: FoundHose,
  watch: Watch,
): Lay {
  const { project, bay } = context;
  const { candidate, attempt = EVERYTHING, startedAt = watch.now() } = found;
  const timingsMs = (): Record<string, number> => ({ lay: watch.now() - startedAt });
  const broken = brokenByShape(setting, candidate.shape);
  const climbs = broken.some((b) => b.wish === 'fall');
  const tooShort = shortByMm(setting, candidate.tautLiveMm) > SAME_POINT_MM;
  const clean = candidate.judgement.fault === 0 && keepsAllAsked(attempt) && !climbs && !tooShort;
  const lay = measureLay({
    project,
    setting,
    bay,
    others,
    shape: candidate.shape,
    tautLiveMm: candidate.tautLiveMm,
    outcome: clean ? 'laid' : attempt.blind === true ? 'no-way' : 'near-miss',
    timingsMs: timingsMs(),
  });
  const givenUp = givenUpOf(setting, broken);
  const told = givenUp.length === 0 ? lay : { ...lay, givenUp };
  if (!clean) {
    const pinchedAt = (near: Clearance): Pinch | undefined => pinchAt(project, setting, bay, others, near);
    const reason =
      attempt.givesUpSlack === true && !climbs
        ? noRoomForSlack(lay, setting)
        : reasonOf(lay, candidate, setting, pinchedAt);
    return { ...told, reason };
  }
  const breathing =
    found.breathing ?? breathe(project, setting, candidate, contactOfRun(bay, others, setting), bay, others, watch);
  return { ...told, breathing: [...breathing], timingsMs: timingsMs() };
}
