import { inchesToMm } from '../../base/units.ts';
import { FLARE_SIZES } from '../../document/parts/published/flareSizes.ts';

/** The room an open-ended wrench takes, mm; all of it lies in a layer of `thicknessMm` square to the nut's axis. */
export interface Wrench {
  readonly hexMm: number;
  /** from the middle of the nut to the end of the handle */
  readonly lengthMm: number;
  readonly headMm: number;
  readonly thicknessMm: number;
  readonly handleMm: number;
}

/**
 * The envelope of a short open-ended wrench for a hex across flats, mm: head 2.2 hex wide, 0.45 hex thick, handle 0.9 hex
 * wide, 60 mm + 5 hex long from the nut's middle. From memory of wrenches in the hand (common practice, no source): the
 * head is that of a standard wrench (about 2.1 hex wide and 0.4 thick, from memory of DIN 3110), the length that of the short
 * ones sold for hose ends. A longer one asks for more room, a thinner one for less.
 */
export function wrenchFor(hexMm: number): Wrench {
  return {
    hexMm,
    lengthMm: 60 + 5 * hexMm,
    headMm: 2.2 * hexMm,
    thicknessMm: 0.45 * hexMm,
    handleMm: 0.9 * hexMm,
  };
}

/** Times hex. How long a nut is, of which a wrench takes the middle: common practice, no source. */
export const NUT_LENGTH = 0.75;

/**
 * The hex of a 37 degree flare nut by dash, mm across flats: the table's (US Army TM 55-1520-240-23-1), the next larger size's
 * where the table has none, and beyond its last 1.6 times the tube's outside diameter, as at -20.
 */
export function flareNutHexMm(dash: number): number {
  const known = FLARE_SIZES.find((size) => size.dash >= dash && size.nutHexMm !== undefined);
  return known?.nutHexMm ?? inchesToMm(dash / 16) * BEYOND_TABLE;
}

const BEYOND_TABLE = 1.6;
