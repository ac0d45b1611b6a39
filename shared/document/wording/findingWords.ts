import type { Outcome, Severity } from '../lay/schema.ts';

/** How grave a finding is, in one word and in a sentence. */
export const SEVERITY_WORDS: Readonly<Record<Severity, { readonly word: string; readonly meaning: string }>> = {
  stop: { word: 'Stop', meaning: 'Do not cut.' },
  look: { word: 'Look', meaning: 'Decide before cutting.' },
  note: { word: 'Note', meaning: 'Know it.' },
};

/** How laying a run ended. */
export const OUTCOME_WORDS: Readonly<Record<Outcome, { readonly word: string; readonly meaning: string }>> = {
  laid: { word: 'Laid', meaning: 'Meets bend radius and clearance.' },
  'near-miss': { word: 'Near miss', meaning: 'The best lay found breaks a limit.' },
  'no-way': { word: 'No way', meaning: 'No lay was found.' },
};

/** Every check, in the order that findings are listed. */
export const CHECK_NAMES = [
  'laid',
  'bendRadius',
  'straightTail',
  'endRoom',
  'slack',
  'breathing',
  'tolerance',
  'asBuilt',
  'rock',
  'taperRange',
  'clearance',
  'heatDistance',
  'heatEstimate',
  'chafe',
  'clampSpacing',
  'drainFall',
  'turboDrainEnds',
  'coolantHighPoint',
  'suctionBend',
  'suctionPressure',
  'flowSpeed',
  'pressureDrop',
  'drainCapacity',
  'onePlane',
  'bundlePressure',
  'pressureRating',
  'vacuumKnown',
  'pushOn',
  'fluidCore',
  'fuelMarking',
  'hoseLife',
  'endMetals',
  'temperatureRating',
  'staticCharge',
] as const;
export type CheckName = (typeof CHECK_NAMES)[number];

/** What a check looks at, as window and papers head it. */
export const CHECK_WORDS: Readonly<Record<CheckName, string>> = {
  laid: 'The lay itself',
  bendRadius: 'Bend radius',
  straightTail: 'Straight hose at the ends',
  endRoom: 'Room for the ends',
  slack: 'Slack',
  breathing: 'Length under pressure',
  tolerance: 'Cut and clock within tolerance',
  asBuilt: 'The hose as made',
  rock: 'Engine movement',
  taperRange: 'Taper threads',
  clearance: 'Clearance',
  heatDistance: 'Distance to heat',
  heatEstimate: 'Temperatures, estimated',
  chafe: 'Chafe',
  clampSpacing: 'Clamp spacing',
  drainFall: 'Fall of the drain',
  turboDrainEnds: 'Ends on the drain',
  coolantHighPoint: 'Trapped air',
  suctionBend: 'Bends before the pump',
  suctionPressure: 'Pressure at the pump',
  flowSpeed: 'Flow speed',
  pressureDrop: 'Pressure drop',
  drainCapacity: 'What the drain carries',
  onePlane: 'One plane',
  bundlePressure: 'Pressures in the bundle',
  pressureRating: 'Pressure',
  vacuumKnown: 'Vacuum',
  pushOn: 'Push-on joints',
  fluidCore: 'Fluid and core',
  fuelMarking: 'Marking of fuel hose',
  hoseLife: 'Age of the hose',
  endMetals: 'Metals of the ends',
  temperatureRating: 'Temperature',
  staticCharge: 'Static charge',
};
