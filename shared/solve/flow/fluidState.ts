import { FLUID_DENSITY } from '../../document/parts/hoseWeight.ts';
import type { Fluid, Service } from '../../document/project/schema.ts';

/** What flows: kg/m3 and mm^2/s (cSt) at its temperature, the viscosity from low to high as well as it is known. */
export interface FluidState {
  readonly densityKgPerM3: number;
  readonly viscosityMm2PerS: { readonly low: number; readonly likely: number; readonly high: number };
  /** where the viscosity comes from, in words */
  readonly basis: string;
  /** where the density comes from, in words */
  readonly densityBasis: string;
}

/** Two points of kinematic viscosity, deg C and mm^2/s, and by what factor either way it is not known. */
interface Known {
  readonly points: readonly (readonly [temperatureC: number, mm2PerS: number])[];
  readonly factor: number;
  readonly basis: string;
}

const MEMORY = 'from memory';

/** mm^2/s at 100 deg C between which an oil of a grade lies: SAE J300 (2015-01-20). */
export const SAE_J300 = { 30: [9.3, 12.5], 40: [12.5, 16.3], 50: [16.3, 21.9] } as const;
const [SAE_40_FROM, SAE_40_TO] = SAE_J300[40];

const VISCOSITY: Partial<Record<Fluid, Known>> = {
  'engine-oil': {
    points: [
      [40, 100],
      [100, 14.3],
    ],
    factor: 1.6,
    basis: `oil of SAE 40 taken (${SAE_40_FROM} to ${SAE_40_TO} cSt at 100 C, SAE J300; about 100 at 40 C ${MEMORY}); 30 and 50 lie in the band`,
  },
  coolant: {
    points: [
      [20, 3.65],
      [40, 2.12],
      [60, 1.39],
      [80, 0.99],
      [100, 0.75],
    ],
    factor: 1.25,
    basis: `half ethylene glycol, half water taken; viscosity ${MEMORY}`,
  },
  'raw-water': {
    points: [
      [20, 1.05],
      [80, 0.38],
    ],
    factor: 1.1,
    basis: `sea water as fresh water (1.004 cSt at 20 C, IAPWS; 0.374 at 80 C, a table that lies 2 % high, EdM44/hydraulics) and 4 % ${MEMORY}`,
  },
  petrol: {
    points: [
      [20, 0.6],
      [60, 0.42],
    ],
    factor: 1.3,
    basis: `petrol, ${MEMORY}`,
  },
  avgas: {
    points: [
      [20, 0.65],
      [60, 0.45],
    ],
    factor: 1.3,
    basis: `avgas as petrol, ${MEMORY}`,
  },
  e85: {
    points: [
      [20, 1.4],
      [60, 0.75],
    ],
    factor: 1.3,
    basis: `E85, ${MEMORY}`,
  },
  methanol: {
    points: [
      [20, 0.74],
      [60, 0.45],
    ],
    factor: 1.2,
    basis: `methanol, ${MEMORY}`,
  },
  diesel: {
    points: [
      [40, 3],
      [80, 1.5],
    ],
    factor: 1.5,
    basis: `diesel, ${MEMORY}`,
  },
};

/**
 * Density and viscosity of what a run carries, running; undefined for air, for the gas and water of a wet exhaust,
 * which no law here reckons, and for a fluid that is not named, whose viscosity has to be stated. A stated viscosity is taken as exact. Between known points by Walther's rule (ASTM D341),
 * log log (viscosity + 0.7) straight over log absolute temperature; the band is the table's.
 */
export function fluidState({ fluid, temperatureC, viscosityMm2PerS }: Service): FluidState | undefined {
  const { kgPerM3: densityKgPerM3, source } = FLUID_DENSITY[fluid];
  if (densityKgPerM3 <= 0 || fluid === 'exhaust-water') return undefined;
  const densityBasis = `density ${densityKgPerM3} kg/m3: ${source}`;
  if (viscosityMm2PerS !== undefined) {
    const stated = { low: viscosityMm2PerS, likely: viscosityMm2PerS, high: viscosityMm2PerS };
    return { densityKgPerM3, viscosityMm2PerS: stated, basis: 'viscosity as stated', densityBasis };
  }
  const known = VISCOSITY[fluid];
  if (known === undefined) return undefined;
  const likely = walther(known.points, temperatureC);
  const { factor, basis } = known;
  const band = { low: likely / factor, likely, high: likely * factor };
  return { densityKgPerM3, viscosityMm2PerS: band, basis, densityBasis };
}

const KELVIN = 273.15;
const WALTHER = 0.7;

/** mm^2/s at a temperature, from points with rising temperature; beyond them on the last two's line. */
function walther(points: Known['points'], temperatureC: number): number {
  const after = points.findIndex(([at]) => at >= temperatureC);
  const i = after === -1 ? points.length - 1 : Math.max(1, after);
  const [t0, v0] = points[i - 1] as readonly [number, number];
  const [t1, v1] = points[i] as readonly [number, number];
  const steep = (v: number): number => Math.log10(Math.log10(v + WALTHER + ADDED));
  const share = Math.log((temperatureC + KELVIN) / (t0 + KELVIN)) / Math.log((t1 + KELVIN) / (t0 + KELVIN));
  const y = steep(v0) + (steep(v1) - steep(v0)) * share;
  return 10 ** (10 ** y) - WALTHER - ADDED;
}

/** mm^2/s. Keeps the double logarithm defined for thin fluids, where the standard adds terms of its own below 2 cSt. */
const ADDED = 0.6;
