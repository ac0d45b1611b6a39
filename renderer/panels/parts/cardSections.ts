import type { PartKind } from '../../../shared/document/parts/columns.ts';

/** One part of a card: columns that are filled in together. */
export interface CardSection {
  readonly title: string;
  readonly keys: readonly string[];
}

const WHOSE: CardSection = { title: 'Whose figures', keys: ['provenance', 'source'] };

/** Every column of a kind but its id, in the order in which a part is taken into the hand, measured, and looked up. */
export const CARD_SECTIONS: Readonly<Record<PartKind, readonly CardSection[]>> = {
  hoses: [
    { title: 'What it is', keys: ['name', 'construction', 'core', 'conductiveCore', 'cover', 'dash'] },
    {
      title: 'Sizes',
      keys: ['insideDiameterMm', 'outsideDiameterMm', 'minBendRadiusMm', 'minBendRadiusDatum', 'convolutionPitchMm'],
    },
    {
      title: 'What it withstands',
      keys: [
        'maxPressureKpa',
        'pressureByTemperature',
        'minTemperatureC',
        'maxTemperatureC',
        'vacuumLimitKpa',
        'listedFluids',
        'marking',
        'proofPressureKpa',
        'burstPressureKpa',
      ],
    },
    { title: 'Weight and stiffness', keys: ['weightKgPerM', 'bendingStiffnessNmm2', 'bendingStiffnessMethod'] },
    { title: 'Cost', keys: ['pricePerM'] },
    WHOSE,
  ],
  ends: [
    { title: 'What it is', keys: ['name', 'seat', 'dash', 'form', 'joint', 'material'] },
    { title: 'Bend and turning', keys: ['bendAngleDeg', 'turning', 'turnFromDeg', 'turnToDeg'] },
    { title: 'Lengths', keys: ['cutOffMm', 'dropMm', 'seatToBendMm', 'bendToShoulderMm', 'tubeBendRadiusMm'] },
    {
      title: 'Socket or collar',
      keys: ['shoulderToMouthMm', 'insertionDepthMm', 'collarDiameterMm', 'collarLengthMm'],
    },
    { title: 'Nut and bore', keys: ['hexMm', 'nutReachMm', 'torqueNm', 'boreMm'] },
    {
      title: 'Assembly',
      keys: ['innerOlive', 'expander', 'crimpDie', 'crimpSetting', 'crimpFromMm', 'crimpToMm'],
    },
    { title: 'What it withstands', keys: ['maxPressureKpa', 'maxTemperatureC', 'weightG'] },
    { title: 'Cost', keys: ['price'] },
    WHOSE,
  ],
  sleeves: [
    {
      title: 'What it is',
      keys: ['name', 'insideDiameterMm', 'outsideDiameterMm', 'maxTemperatureC', 'weightKgPerM'],
    },
    WHOSE,
  ],
  adapters: [
    { title: 'What it is', keys: ['name', 'form', 'material'] },
    { title: 'What it joins', keys: ['portSeat', 'portDash', 'seat', 'dash'] },
    {
      title: 'Lengths and turning',
      keys: ['bendAngleDeg', 'turning', 'portToBendMm', 'bendToSeatMm', 'diameterMm', 'hexMm'],
    },
    { title: 'Branch of a tee', keys: ['branchSeat', 'branchDash', 'branchAngleDeg', 'branchToSeatMm'] },
    { title: 'What it withstands', keys: ['maxPressureKpa', 'weightG'] },
    WHOSE,
  ],
  clamps: [
    { title: 'What it is', keys: ['name', 'material', 'maxTemperatureC'] },
    { title: 'Sizes', keys: ['holdsFromMm', 'holdsToMm', 'standOffMm', 'widthMm', 'boltMm', 'weightG'] },
    WHOSE,
  ],
  rolls: [
    { title: 'What lies there', keys: ['hose', 'lengthMm', 'batch', 'cureDate', 'offcut', 'place', 'note'] },
    WHOSE,
  ],
};

/** Columns that say something only of some parts: shown there, and wherever they are filled in. */
export function isAsked(key: string, values: Readonly<Record<string, unknown>>): boolean {
  if (values[key] !== undefined) return true;
  if (key === 'turnFromDeg' || key === 'turnToDeg') return values['turning'] === 'range';
  if (key.startsWith('branch')) return values['form'] === 'tee';
  if (key === 'innerOlive' || key === 'expander') return values['joint'] !== 'crimp' && values['joint'] !== 'clamped';
  if (key === 'convolutionPitchMm') return values['core'] === 'ptfe-convoluted';
  if (key.startsWith('crimp')) return values['joint'] === 'crimp';
  return key !== 'bendingStiffnessMethod' || values['bendingStiffnessNmm2'] !== undefined;
}
