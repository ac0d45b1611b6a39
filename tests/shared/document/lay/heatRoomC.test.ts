import { expect, it } from 'vitest';
import type { HeatState } from '../../../../shared/document/lay/heat.ts';
import { heatRoomC } from '../../../../shared/document/lay/heatRoomC.ts';

function state(likely: number[]): HeatState {
  const track = { low: likely.map((c) => c - 20), likely, high: likely.map((c) => c + 20) };
  const band = { low: 0, likely: 0, high: 0 };
  const at = { arcLengthMm: 0, point: [0, 0, 0] as [number, number, number] };
  return { liner: track, cover: track, hottest: { at, liner: band, cover: band } };
}

it('is what the liner lacks to its limit where it is hottest, running or in hot soak, by the likely value', () => {
  expect(heatRoomC({ linerLimitC: 200, running: state([90, 140, 110]), soak: state([100, 120, 100]) })).toBe(60);
  expect(heatRoomC({ linerLimitC: 200, running: state([90, 140]), soak: state([100, 215]) })).toBe(-15);
});
