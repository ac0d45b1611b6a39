import type { Lay } from '../../document/lay/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { LayContext } from './layContext.ts';
import { measureLay } from './measureLay.ts';
import type { RunSetting } from './runSetting.ts';
import { straightShape } from './straightShape.ts';

const NO_HOSE =
  'no hose of this bend radius joins the two ends as they stand: the straight line between them is shown only to find the run';

/** What is answered where no hose can be shown at all. */
export function layWithoutHose(
  { project, bay }: LayContext,
  setting: RunSetting,
  others: TubeField,
  timingsMs: Record<string, number>,
): Lay {
  const shape = straightShape(setting);
  const measured = { project, setting, bay, others, shape, tautLiveMm: shape.liveLengthMm };
  return { ...measureLay({ ...measured, outcome: 'no-way', timingsMs }), reason: NO_HOSE };
}
