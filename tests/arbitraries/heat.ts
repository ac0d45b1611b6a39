import type { Heat, HeatBand, HeatState, HeatTrack } from '../../shared/document/lay/heat.ts';

/** Where the heat of a made-up lay is known: mouths and middle of a straight one. */
export const HEAT_PLACES = [20, 250, 480];

/** The heat of a lay that is hottest at its middle by `middle` and has `mouths` at both mouths, the same in every layer and state. */
export function heatAlong(middle: HeatBand, mouths: HeatBand = middle, changes: Partial<Heat> = {}): Heat {
  const track: HeatTrack = {
    low: [mouths.low, middle.low, mouths.low],
    likely: [mouths.likely, middle.likely, mouths.likely],
    high: [mouths.high, middle.high, mouths.high],
  };
  const state: HeatState = {
    liner: track,
    cover: track,
    hottest: { at: { arcLengthMm: 250, point: [250, 0, 0] }, liner: middle, cover: middle },
  };
  return {
    arcLengthMm: HEAT_PLACES,
    radiationWPerM2: [500, 4000, 500],
    radiationErrorWPerM2: [50, 200, 50],
    raysPerPlace: 3072,
    linerLimitC: 230,
    running: state,
    soak: state,
    sources: [{ from: { kind: 'skin', id: 'exhaust', part: 'exhaust-left' }, share: 0.8, wPerM2: 3200 }],
    basis: ['made up'],
    ...changes,
  };
}
