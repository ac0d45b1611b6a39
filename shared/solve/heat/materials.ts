import type { Hose } from '../../document/parts/schema.ts';
import type { Fluid } from '../../document/project/schema.ts';

/** A figure as well as it is known. */
export interface Known {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Of a hot skin whose own is not stated. Oxidised steel at 600 C 0.79 (infrared instrument manual, Omega OS100); oxidised
 * cast iron 0.60 to 0.95 (Raytek MI3 p. 116), 0.64 to 0.78 at 198 to 600 C (Trotec IC p. B-22); a turbine housing 0.92
 * (Clean Technol. 2022, 4(2), 329).
 */
export const HOT_SKIN_EMISSIVITY: Known = { low: 0.6, likely: 0.8, high: 0.95 };

/** Whose word that is. */
export const HOT_SKIN_SOURCE = 'instrument manuals, Omega OS100, Raytek MI3, Trotec IC; Clean Technol. 2022, 4(2), 329';

/**
 * Of a hose's outside, which takes in as much as it gives out. Rubber and cloth 0.86 to 0.95: textbook, from memory.
 * Stainless wire 0.16 polished, 0.36 to 0.44 as 304 at 215 to 490 C (Trotec IC); its braid holds light between the wires:
 * 0.5, from memory.
 */
export const COVER_EMISSIVITY: Record<Hose['cover'], Known> = {
  'steel-braid': { low: 0.35, likely: 0.5, high: 0.7 },
  'polyester-braid': { low: 0.85, likely: 0.9, high: 0.95 },
  'aramid-braid': { low: 0.85, likely: 0.9, high: 0.95 },
  'textile-braid': { low: 0.85, likely: 0.9, high: 0.95 },
  rubber: { low: 0.85, likely: 0.9, high: 0.95 },
};

/** Of a coated glass sleeve: as glass cloth and silicone rubber, textbook, from memory. */
export const SLEEVE_EMISSIVITY: Known = { low: 0.85, likely: 0.9, high: 0.95 };

/** W/(m K), from memory: PTFE 0.25, rubbers 0.16 to 0.3. */
export const CORE_CONDUCTIVITY: Record<Hose['core'], number> = {
  'ptfe-smooth': 0.25,
  'ptfe-convoluted': 0.25,
  nbr: 0.22,
  cpe: 0.2,
  epdm: 0.25,
  silicone: 0.22,
  'synthetic-rubber': 0.22,
};

/** W/(m K) of a cover across its thickness, from memory: wires that touch in points, cloth full of air. */
export const COVER_CONDUCTIVITY: Record<Hose['cover'], number> = {
  'steel-braid': 1,
  'polyester-braid': 0.12,
  'aramid-braid': 0.1,
  'textile-braid': 0.1,
  rubber: 0.22,
};

/** W/(m K) of a cover round the hose: along its wires in steel, else as across. From memory: half of 16 is wire, at an angle. */
export const COVER_ROUND_CONDUCTIVITY: Record<Hose['cover'], number> = { ...COVER_CONDUCTIVITY, 'steel-braid': 4 };

/** W/(m K) of a coated glass sleeve, from memory. */
export const SLEEVE_CONDUCTIVITY = 0.1;

/** J/(kg K) of hose and of sleeve, from memory: PTFE 1000, steel 500, rubber 1800, glass 800. */
export const WALL_HEAT_J_PER_KG_K = 1000;

/** Share of a hose's wall that is core; the rest is cover and what lies between. From memory. */
export const CORE_SHARE = 0.5;

/** Between which factors the conductance of a wall is known. */
export const WALL_BAND = { low: 0.6, high: 1.6 } as const;

/** W/(m K) and J/(kg K) of what a hose carries, running; from memory. `other` lies between oil and water; of a wet exhaust the water wets the wall. */
export const FLUID_HEAT: Record<Fluid, { readonly conductivityWPerMK: number; readonly heatJPerKgK: number }> = {
  'engine-oil': { conductivityWPerMK: 0.13, heatJPerKgK: 2200 },
  petrol: { conductivityWPerMK: 0.12, heatJPerKgK: 2200 },
  e85: { conductivityWPerMK: 0.16, heatJPerKgK: 2500 },
  methanol: { conductivityWPerMK: 0.2, heatJPerKgK: 2600 },
  avgas: { conductivityWPerMK: 0.12, heatJPerKgK: 2200 },
  diesel: { conductivityWPerMK: 0.13, heatJPerKgK: 2100 },
  coolant: { conductivityWPerMK: 0.4, heatJPerKgK: 3500 },
  'raw-water': { conductivityWPerMK: 0.63, heatJPerKgK: 4000 },
  'exhaust-water': { conductivityWPerMK: 0.63, heatJPerKgK: 4000 },
  air: { conductivityWPerMK: 0.031, heatJPerKgK: 1007 },
  other: { conductivityWPerMK: 0.3, heatJPerKgK: 3000 },
};
