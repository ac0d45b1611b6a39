import type { BEARINGS, Fluid, Purpose, Vehicle } from '../project/schema.ts';

/** What a run is for, as window and papers say it. */
export const PURPOSE_WORDS: Readonly<Record<Purpose, string>> = {
  'turbo-oil-feed': 'Turbo oil feed',
  'turbo-oil-drain': 'Turbo oil drain',
  'turbo-water': 'Turbo water',
  'oil-pressure': 'Oil, pressure side',
  'oil-suction': 'Oil, suction side',
  'oil-cooler': 'Oil cooler',
  'oil-return': 'Oil return to the tank',
  fuel: 'Fuel',
  'fuel-fill': 'Fuel filler',
  'fuel-vent': 'Vent of a fuel tank',
  coolant: 'Coolant',
  'raw-water': 'Raw water',
  'wet-exhaust': 'Wet exhaust',
  breather: 'Breather',
  other: 'Other service',
};

/** What runs in it. */
export const FLUID_WORDS: Readonly<Record<Fluid, string>> = {
  'engine-oil': 'Engine oil',
  petrol: 'Petrol (gasoline)',
  e85: 'E85 (ethanol fuel)',
  methanol: 'Methanol',
  avgas: 'Avgas',
  diesel: 'Diesel',
  coolant: 'Coolant (glycol and water)',
  'raw-water': 'Raw water',
  'exhaust-water': 'Exhaust gas and water',
  air: 'Air',
  other: 'Other fluid',
};

/** The bearing of a turbo. */
export const BEARING_WORDS: Readonly<Record<(typeof BEARINGS)[number], string>> = {
  ball: 'Ball bearing',
  journal: 'Journal bearing',
};

/** Whose bay it is. */
export const VEHICLE_WORDS: Readonly<Record<Vehicle, string>> = {
  car: 'A car',
  motorcycle: 'A motorcycle',
  boat: 'A boat',
  aircraft: 'An aircraft',
  other: 'Something else',
};
