import { z } from 'zod';
import { finite, Place, Thing } from './places.ts';

/** What the lay report says of the heat a hose sees: an estimate. deg C, each figure with its band. */
export const HeatBand = z
  .strictObject({ low: finite, likely: finite, high: finite })
  .describe('deg C: the likely value, and the band of what was assumed and of the rays together');

export const HeatTrack = z
  .strictObject({ low: z.array(finite), likely: z.array(finite), high: z.array(finite) })
  .describe('deg C at each place of arcLengthMm, of the hottest side of the hose there');

export const HeatState = z.strictObject({
  liner: HeatTrack.describe('inner surface of the core'),
  cover: HeatTrack.describe('outside of the hose itself'),
  sleeve: HeatTrack.optional().describe('outside of its sleeve; absent = it has none'),
  hottest: z
    .strictObject({ at: Place, liner: HeatBand, cover: HeatBand, sleeve: HeatBand.optional() })
    .describe('where the cover is hottest'),
});

export const HeatSource = z.strictObject({
  from: Thing,
  share: finite.describe('of all the radiation that hot skins send there'),
  wPerM2: finite.describe('what falls on the hose, on average round it'),
});

export const Heat = z
  .strictObject({
    arcLengthMm: z.array(finite).describe('from mouth to mouth, from shoulder A'),
    radiationWPerM2: z.array(finite).describe('from hot skins onto the hose, on average round it'),
    radiationErrorWPerM2: z.array(finite).describe('one standard error of the rays'),
    raysPerPlace: z.int(),
    linerLimitC: finite.describe("the hose's own limit"),
    running: HeatState,
    soak: HeatState.describe('engine just off: the hottest that each place then gets'),
    sources: z.array(HeatSource).describe('what heats its hottest place running, most first'),
    basis: z.array(z.string()).describe('what was taken, stated or assumed'),
  })
  .describe('temperatures along the hose: an estimate');

export type HeatBand = z.infer<typeof HeatBand>;
export type HeatTrack = z.infer<typeof HeatTrack>;
export type HeatState = z.infer<typeof HeatState>;
export type HeatSource = z.infer<typeof HeatSource>;
export type Heat = z.infer<typeof Heat>;
