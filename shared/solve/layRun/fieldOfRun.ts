import { buildRunField, type RunField } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { LayContext } from './layContext.ts';
import { runKeeps } from './runLimits.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * Where a run's centreline may lie, bay frame, mm: clear of every skin of the bay and of `others` by what the project asks of this run.
 * share: part of each clearance that is asked, 0 to 1, as in `runKeeps`. coarse: as in `buildRunField`.
 */
export function fieldOfRun(
  context: Pick<LayContext, 'project' | 'bay'>,
  setting: RunSetting,
  others: TubeField,
  share = 1,
  coarse?: RunField['coarseMarginMm'],
): RunField {
  return buildRunField(context.bay, others, runKeeps(context, setting, share), coarse);
}
