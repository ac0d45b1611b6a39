import { MM_PER_INCH } from '../../base/units.ts';

export const SLEEVE_REACH_SOURCE =
  'aerospace hose shop notes on fire sleeve; a kit builder’s log (1/8 in past each socket)';

/** mm past each shoulder that a sleeve must reach to cover its socket and still leave the nut free. */
export const SLEEVE_REACH_MM = MM_PER_INCH / 8;

/**
 * The least length to cut a sleeve, mm: over the hose from shoulder to shoulder and 1/8 in past it at each end. More is
 * wanted on large bores and many bends, so paper says `at least`. Cut length of the hose in mm. Source: trade notes of
 * an aerospace hose shop ("cut longer than hose"), reach of 1/8 in from a builder's log; no standard found.
 */
export function sleeveCutLengthMm(hoseCutLengthMm: number): number {
  return hoseCutLengthMm + 2 * SLEEVE_REACH_MM;
}
