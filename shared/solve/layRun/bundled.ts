import type { Watch } from '../../base/watch.ts';
import type { Project } from '../../document/project/schema.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { besideMate, matesAmong } from './besideMate.ts';
import type { Candidate } from './candidate.ts';
import { contactOfRun } from './contactOfRun.ts';
import { fieldOfRun } from './fieldOfRun.ts';
import { SLACK_STEPS } from './findShape.ts';
import { lacksOf } from './lacksOf.ts';
import { bestOfRoute } from './letLie.ts';
import { withReserve } from './reserve.ts';
import { routeRun } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { liveMmOf } from './tautLiveMm.ts';

/** A hose may be so many times as long as by itself, to lie beside another of its bundle. */
const LONGEST_DETOUR = 1.3;

/** How a run stands to the hoses of its bundle that are laid: none are, it lies tied to one, or it goes its own way. */
export type Bundled =
  | { readonly kind: 'none' }
  | { readonly kind: 'tied'; readonly candidate: Candidate; readonly to: string }
  | { readonly kind: 'apart'; readonly from: readonly string[] };

/**
 * Tries to lay a run beside a hose of its bundle that lies already, tied to it with proposed clamps, keeping all of its
 * clearances, tails and character. Runs with supports of their own, and hoses already cut, are led by those instead.
 */
export function layBundled(
  { project, bay }: { readonly project: Project; readonly bay: BayIndex },
  setting: RunSetting,
  others: TubeField,
  watch: Watch,
): Bundled {
  const mates = matesAmong(project, setting.run, others);
  if (mates.length === 0) return { kind: 'none' };
  const apart: Bundled = { kind: 'apart', from: mates.map((m) => m.run) };
  if (setting.supports.length > 0 || setting.cutLengthMm !== undefined) return apart;
  const field = fieldOfRun({ project, bay }, setting, others);
  const led = withReserve(field);
  const free = routeRun(setting, led, setting.minRadiusMm, setting.tailMm, 1, 'glance', watch).routes[0];
  if (free === undefined) return apart;
  const surroundings = { field, contact: contactOfRun(bay, others, setting), tautLiveOf: liveMmOf, mayTouch: true };
  const mostMm = LONGEST_DETOUR * free.lengthMm;
  for (const mate of mates)
    for (const route of besideMate(setting, mate, led, setting.tailMm, mostMm, watch)) {
      const candidate = bestOfRoute(setting, route, [], SLACK_STEPS.snug, surroundings, watch);
      if (candidate?.judgement.content === true && lacksOf(setting, { candidate }).length === 0)
        return { kind: 'tied', candidate, to: mate.run };
    }
  return apart;
}
