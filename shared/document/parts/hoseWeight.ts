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

/** What a fluid weighs, and on whose word. */
export interface Density {
  readonly kgPerM3: number;
  readonly source: string;
}

const AT_15 = 'at 15 deg C, from memory';

/**
 * Of fluids as they run. Engine oil 850 to 880 at 15 deg C, from memory, so 820 hot. A wet exhaust is weighed as full of sea
 * water, which it is where the engine stops and it drains back: the heavier guess. Air counts as nothing.
 */
export const FLUID_DENSITY: Record<Fluid, Density> = {
  'engine-oil': { kgPerM3: 820, source: 'hot oil, from memory' },
  petrol: { kgPerM3: 745, source: AT_15 },
  e85: { kgPerM3: 785, source: AT_15 },
  methanol: { kgPerM3: 790, source: AT_15 },
  avgas: { kgPerM3: 715, source: AT_15 },
  diesel: { kgPerM3: 835, source: AT_15 },
  coolant: { kgPerM3: 1042, source: 'half ethylene glycol by mass at 80 deg C, corecheminc.com, mixture properties' },
  'raw-water': { kgPerM3: 1025, source: 'sea water at 20 deg C, from memory' },
  'exhaust-water': { kgPerM3: 1025, source: 'as full of sea water at 20 deg C, from memory' },
  air: { kgPerM3: 0, source: 'counted as nothing' },
  other: { kgPerM3: 998, source: 'as fresh water at 20 deg C, EdM44/hydraulics: the heavier guess' },
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
  const fluidKgPerM = FLUID_DENSITY[fluid].kgPerM3 * circleM2(hose.insideDiameterMm);
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
