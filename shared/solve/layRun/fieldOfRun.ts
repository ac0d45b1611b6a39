import { buildRunField, type RunField } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { LayContext } from './layContext.ts';
import { withReserve } from './reserve.ts';
import { runKeeps } from './runLimits.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * Where a run's centreline may lie, bay frame, mm: clear of every skin of the bay and of `others` by what the project asks of this run.
 * share: part of each clearance that is asked, 0 to 1, as in `runKeeps`.
 */
export function fieldOfRun(
  context: Pick<LayContext, 'project' | 'bay'>,
  setting: RunSetting,
  others: TubeField,
  share = 1,
): RunField {
  return buildRunField(context.bay, others, runKeeps(context, setting, share));
}

/** The fields of one run by the share of each clearance that is asked: where it may lie, and where its routes are led. */
export type FieldsOfRun = (share: number) => { readonly asked: RunField; readonly led: RunField };

/** Fields of a run, each made when first wanted and kept: what searches found out about one is known to all that work in it. */
export function fieldsOfRun(
  context: Pick<LayContext, 'project' | 'bay'>,
  setting: RunSetting,
  others: TubeField,
): FieldsOfRun {
  const known = new Map<number, ReturnType<FieldsOfRun>>();
  return (share) => {
    const last = known.get(share);
    if (last !== undefined) return last;
    const asked = fieldOfRun(context, setting, others, share);
    const fields = { asked, led: withReserve(asked) };
    known.set(share, fields);
    return fields;
  };
}
