import type { BayIndex } from '../bay/bayIndex.ts';
import { buildContactField } from '../bay/contactField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

/** What a run may come to lie against: the bay and the other hoses, but for what it is held to. */
export function contactOfRun(bay: BayIndex, others: TubeField, setting: RunSetting): ContactField {
  return buildContactField(bay, others, setting.outsideRadiusMm, heldPlaces(setting));
}
