import type { HandChange } from '../../document/hand/handChange.ts';
import { type ResolvedEnd, type ResolvedRun, seatedPort, squarePort } from '../../document/project/resolve.ts';
import type { RunField } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { contactOfRun } from '../layRun/contactOfRun.ts';
import { fieldOfRun } from '../layRun/fieldOfRun.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { type Neighbour, neighboursOf } from '../layRun/neighbours.ts';
import { runSetting } from '../layRun/runLimits.ts';
import type { RunSetting } from '../layRun/runSetting.ts';
import type { ContactField } from '../rod/index.ts';

/** What the hand's run is laid in, while its ports and supports stand as they do. */
export interface HandPlace {
  readonly setting: RunSetting;
  readonly field: RunField;
  readonly contact: ContactField;
  readonly neighbours: readonly Neighbour[];
}

/** Answers the place for a change; kept from move to move while neither ports nor supports move. */
export function handPlaces(
  { project, bay }: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
): (change: HandChange) => HandPlace {
  const neighbours = neighboursOf(project, resolved.run.id, bay, others);
  let last: { key: string; place: HandPlace } | undefined;
  return (change) => {
    const key = JSON.stringify([change.ports, change.supports]);
    if (last?.key === key) return last.place;
    const setting = runSetting(project, changedRun(resolved, change));
    const place: HandPlace = {
      setting,
      field: fieldOfRun({ project, bay }, setting, others),
      contact: contactOfRun(bay, others, setting),
      neighbours,
    };
    last = { key, place };
    return place;
  };
}

function changedRun(resolved: ResolvedRun, { ports, supports }: HandChange): ResolvedRun {
  const moved = (end: ResolvedEnd): ResolvedEnd => {
    const port = ports?.find((p) => p.id === end.port.id);
    return port === undefined ? end : { ...end, ...seatedPort(squarePort(port), end.stack?.adapters ?? []) };
  };
  return {
    ...resolved,
    a: moved(resolved.a),
    b: moved(resolved.b),
    run: supports === undefined ? resolved.run : { ...resolved.run, supports: [...supports] },
  };
}
