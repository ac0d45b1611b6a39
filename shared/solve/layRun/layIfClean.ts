import type { Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type Attempt, EVERYTHING } from './attempts.ts';
import { lacksAtMostSlack } from './lacksOf.ts';
import type { LayContext } from './layContext.ts';
import { layWell } from './layWell.ts';
import { runSetting } from './runLimits.ts';
import { tryAttempt } from './tryAttempt.ts';

const BRIEFLY: Attempt = { ...EVERYTHING, brief: true };

/** As `layRun`, but only if the run lies clean (`lacksOf`): undefined otherwise, and sooner. */
export function layIfClean(
  context: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
  watch: Watch,
): Lay | undefined {
  const setting = runSetting(context.project, resolved);
  const candidate = tryAttempt(context, setting, others, BRIEFLY, watch);
  if (candidate === undefined || !lacksAtMostSlack(setting, { candidate, attempt: BRIEFLY })) return undefined;
  const lay = layWell(context, setting, others, { candidate, attempt: BRIEFLY }, watch);
  return lay.outcome === 'laid' ? lay : undefined;
}
