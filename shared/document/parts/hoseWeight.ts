import type { Fluid } from '../project/schema.ts';
import type { Hose, Sleeve } from './schema.ts';

/** kg/m of hose in its bay, and whether the dry hose was weighed or estimated. */
export interface HoseWeight {
  readonly dryKgPerM: number;
  readonly fluidKgPerM: number;
  readonly sleeveKgPerM: number;
  readonly totalKgPerM: number;
  readonly estimated: boolean;
}

/**
 * kg/m3, running. Coolant: half ethylene glycol at 80 C, 1042 (Core Chem, ethylene glycol mixture table). Fresh water
 * at 80 C is 971.7 and at 20 C 998.2 (published tables); sea water about 1025 at 20 C, from memory. Engine oil 850 to
 * 880 at 15 C, from memory, so 820 hot. Petrol 745, E85 785, methanol 790, avgas 715, diesel 835: from memory, 15 C.
 * A wet exhaust is weighed as full of sea water, which it is where the engine stops and it drains back: the heavier guess. Air counts as nothing. `other` is taken as water, the heavier guess.
 */
export const FLUID_DENSITY_KG_PER_M3: Record<Fluid, number> = {
  'engine-oil': 820,
  petrol: 745,
  e85: 785,
  methanol: 790,
  avgas: 715,
  diesel: 835,
  coolant: 1042,
  'raw-water': 1025,
  'exhaust-water': 1025,
  air: 0,
  other: 998,
};

/** kg/m3 of the wall as a whole, core and cover together. From memory; within about a third. */
const WALL_DENSITY: Record<Hose['cover'], number> = {
  'steel-braid': 2600,
  'polyester-braid': 1500,
  'aramid-braid': 1500,
  'textile-braid': 1300,
  rubber: 1300,
};

/** Weight a metre of hose filled with its fluid, with its sleeve. The dry weight is the table's or wall volume x density. */
export function hoseWeight(hose: Hose, fluid: Fluid, sleeve?: Sleeve): HoseWeight {
  const dryKgPerM =
    hose.weightKgPerM ??
    WALL_DENSITY[hose.cover] * (circleM2(hose.outsideDiameterMm) - circleM2(hose.insideDiameterMm));
  const fluidKgPerM = FLUID_DENSITY_KG_PER_M3[fluid] * circleM2(hose.insideDiameterMm);
  const sleeveKgPerM = sleeve?.weightKgPerM ?? 0;
  return {
    dryKgPerM,
    fluidKgPerM,
    sleeveKgPerM,
    totalKgPerM: dryKgPerM + fluidKgPerM + sleeveKgPerM,
    estimated: hose.weightKgPerM === undefined,
  };
}

function circleM2(diameterMm: number): number {
  return (Math.PI / 4) * (diameterMm / 1000) ** 2;
}
