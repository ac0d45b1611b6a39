import type { BayIndex } from '../bay/bayIndex.ts';
import { buildContactField, buildKeptField } from '../bay/contactField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import type { LayContext } from './layContext.ts';
import { runKeeps } from './runLimits.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

/** What a run may come to lie against: the bay and the other hoses, but for what it is held to. */
export function contactOfRun(bay: BayIndex, others: TubeField, setting: RunSetting): ContactField {
  return buildContactField(bay, others, setting.outsideRadiusMm, heldPlaces(setting));
}

/** mm. A hose held off things where it leans comes a little nearer between its clamps, under pressure some more. */
const IN_HAND_MM = 1;
export const IN_HAND_TO_BREATHE_MM = 6;

/** What a run leans on that keeps clear of everything by `share` of what is asked, and by a little more. */
export function keptOfRun(
  context: Pick<LayContext, 'project' | 'bay'>,
  setting: RunSetting,
  others: TubeField,
  share: number,
  inHandMm = IN_HAND_MM,
): ContactField {
  return buildKeptField(context.bay, others, runKeeps(context, setting, share), inHandMm);
}
