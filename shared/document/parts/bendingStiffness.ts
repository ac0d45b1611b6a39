import type { Hose } from './schema.ts';

/** A bending stiffness and how far to trust it. */
export interface BendingStiffness {
  /** EI, N mm2 */
  readonly valueNmm2: number;
  /** The true one lies within these; equal to the value where it was given. N mm2 */
  readonly lowNmm2: number;
  readonly highNmm2: number;
  readonly estimated: boolean;
}

/**
 * N/mm2. Modulus of a plain tube of the hose's two diameters that bends about as the hose does: far under the braid's
 * own, since braid wires slide. Common practice, no source: set so that a -6 to -10 hose of the kind bends by hand with
 * the few newtons it is known to need. A sag test on the user's own hose replaces it (`bendingStiffnessNmm2`).
 */
const EQUIVALENT_MODULUS: Record<Hose['core'], number> = {
  'ptfe-smooth': 60,
  'ptfe-convoluted': 12,
  nbr: 12,
  cpe: 12,
  epdm: 8,
  silicone: 5,
  'synthetic-rubber': 12,
};
/** A steel braid stiffens the wall more than textile does. Common practice, no source. */
const COVER_FACTOR: Record<Hose['cover'], number> = {
  'steel-braid': 1.5,
  'polyester-braid': 1.1,
  'aramid-braid': 1.2,
  'textile-braid': 1.1,
  rubber: 1,
};
/** The estimate may be this many times too small or too large. */
const BAND_FACTOR = 2.5;

/**
 * The hose's bending stiffness: as its table gives it, else an estimate EI with I = pi (D^4 - d^4) / 64 of the wall and
 * a modulus by core and cover. Shape of a lay hangs little on EI (weight and clamps against it), so a band of 2.5 either
 * way is usable; it is no figure for a force.
 */
export function bendingStiffness(hose: Hose): BendingStiffness {
  const given = hose.bendingStiffnessNmm2;
  if (given !== undefined) return { valueNmm2: given, lowNmm2: given, highNmm2: given, estimated: false };
  const secondMomentMm4 = (Math.PI / 64) * (hose.outsideDiameterMm ** 4 - hose.insideDiameterMm ** 4);
  const valueNmm2 = EQUIVALENT_MODULUS[hose.core] * COVER_FACTOR[hose.cover] * secondMomentMm4;
  return { valueNmm2, lowNmm2: valueNmm2 / BAND_FACTOR, highNmm2: valueNmm2 * BAND_FACTOR, estimated: true };
}
