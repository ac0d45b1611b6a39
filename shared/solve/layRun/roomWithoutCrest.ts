import type { Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import { LONGEST_DETOUR, roomInReach } from './detour.ts';
import { type Route, routeRun } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { liveMmOf } from './tautLiveMm.ts';

/** Where a service bars most ways, whether there is any is found out before time is spent on the shortest. */
export function barsMostWays({ character: { crest }, characterAsked }: RunSetting): boolean {
  return characterAsked && crest !== undefined && !crest.forced;
}

/**
 * The field with its room cut down to what a hose can reach that is not longer than LONGEST_DETOUR allows; nothing where
 * there is no way without a crest in it, as far as a glance sees.
 */
export function roomWithoutCrest(
  setting: RunSetting,
  field: RunField,
  tailMm: number,
  watch: Watch,
): RunField | undefined {
  const glance = (asked: boolean, room: RunField): Route | undefined =>
    routeRun({ ...setting, characterAsked: asked }, room, setting.minRadiusMm, tailMm, 1, 'glance', watch).routes[0];
  const free = glance(false, field);
  if (free === undefined) return undefined;
  const mostMm = LONGEST_DETOUR * liveMmOf(free);
  const room = roomInReach(setting, field, mostMm);
  const kept = glance(true, room);
  return kept !== undefined && kept.lengthMm <= mostMm ? room : undefined;
}
