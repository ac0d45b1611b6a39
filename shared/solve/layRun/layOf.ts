import type { Watch } from '../../base/watch.ts';
import type { Lay, Outcome } from '../../document/lay/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type Attempt, EVERYTHING } from './attempts.ts';
import { breathe } from './breathe.ts';
import { contactOfRun } from './contactOfRun.ts';
import { givenUpOf } from './givenUp.ts';
import { type Found, type Lack, lacksOf, tautBreathOf } from './lacksOf.ts';
import type { LayContext } from './layContext.ts';
import { measureLay } from './measureLay.ts';
import { pinchAt } from './pinchAt.ts';
import { reasonOf, type Why } from './reasonOf.ts';
import type { RunSetting } from './runSetting.ts';
import { brokenByShape } from './shapeLine.ts';

/** A hose that was found, with how. */
export interface FoundHose extends Found {
  /** ms on the watch, since when it was looked for; absent = now */
  readonly startedAt?: number;
}

/** What is told of a hose: breathed where it is clean at rest, measured, and with its reason where it lacks anything. */
export function layOf(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  found: FoundHose,
  watch: Watch,
): Lay {
  const { project, bay } = context;
  const { candidate, attempt = EVERYTHING, startedAt = watch.now() } = found;
  const breathed = breathedIfClean(context, setting, others, found, watch);
  const lacks = lacksOf(setting, breathed);
  const lay = measureLay({
    project,
    setting,
    bay,
    others,
    shape: candidate.shape,
    tautLiveMm: candidate.tautLiveMm,
    outcome: outcomeOf(lacks, attempt),
    timingsMs: {},
  });
  const givenUp = givenUpOf(setting, brokenByShape(setting, candidate.shape));
  const { breathing } = breathed;
  const told: Lay = {
    ...lay,
    ...(givenUp.length === 0 ? {} : { givenUp }),
    ...(breathing === undefined ? {} : { breathing: [...breathing] }),
    timingsMs: { lay: watch.now() - startedAt },
  };
  if (lacks.length === 0) return told;
  const why: Why = {
    pinchedAt: (near) => pinchAt(project, setting, bay, others, near),
    tautBreath: tautBreathOf(setting, candidate, breathing ?? []),
  };
  return { ...told, reason: reasonOf(told, lacks, setting, why) };
}

function outcomeOf(lacks: readonly Lack[], { blind }: Attempt): Outcome {
  if (lacks.length === 0) return 'laid';
  return blind === true ? 'no-way' : 'near-miss';
}

/** The hose with how it breathes, where that is known or it lacks nothing at rest. */
function breathedIfClean(
  { project, bay }: LayContext,
  setting: RunSetting,
  others: TubeField,
  found: Found,
  watch: Watch,
): Found {
  if (found.breathing !== undefined || lacksOf(setting, found).length > 0) return found;
  const contact = contactOfRun(bay, others, setting);
  return { ...found, breathing: breathe(project, setting, found.candidate, contact, bay, others, watch) };
}
