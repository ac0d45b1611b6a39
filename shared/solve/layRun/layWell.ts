import type { Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { breatheWell } from './breatheWell.ts';
import { lacksAtMostSlack } from './lacksOf.ts';
import type { LayContext } from './layContext.ts';
import { type FoundHose, layOf } from './layOf.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * As `layOf`; and of a hose that lacks nothing but slack, at rest or under pressure, one of the others on its way that lacks nothing, where
 * there is one (`breatheWell`). What pressure only brings near to something is not looked to.
 */
export function layWell(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  found: FoundHose,
  watch: Watch,
): Lay {
  const lay = layOf(context, setting, others, found, watch);
  if (lay.outcome === 'laid' || !lacksAtMostSlack(setting, found)) return lay;
  const breathed = breatheWell(context, setting, found.candidate, others, watch);
  const well = layOf(context, setting, others, { ...found, ...breathed }, watch);
  return well.outcome === 'laid' ? well : lay;
}
