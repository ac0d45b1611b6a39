import type { Box } from '../../geometry/box.ts';
import type { RunField } from '../bay/runField.ts';
import { withBounds } from '../search/changedField.ts';
import type { RunSetting } from './runSetting.ts';

/** What a service wishes for may make a hose so many times as long: rather than more of it a builder fits a bleed. */
export const LONGEST_DETOUR = 1.5;

/** The field with its room cut down to what a hose of this length, mm, from port to port can reach. */
export function roomInReach(setting: RunSetting, field: RunField, lengthMm: number): RunField {
  return withBounds(field, reachOf(setting, field.bounds, lengthMm));
}

function reachOf(setting: RunSetting, { min, max }: Box, lengthMm: number): Box {
  const places = [setting.a, setting.b].map(({ port, end }) => ({
    at: port.seatPoint,
    far: lengthMm / 2 + end.seatToBendMm + end.bendToShoulderMm + end.shoulderToMouthMm,
  }));
  const low = (k: 0 | 1 | 2): number => Math.max(min[k], Math.min(...places.map((p) => p.at[k] - p.far)));
  const high = (k: 0 | 1 | 2): number => Math.min(max[k], Math.max(...places.map((p) => p.at[k] + p.far)));
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] };
}
