import type { Hose } from '../parts/schema.ts';
import type { Fluid } from '../project/schema.ts';

/** 1 = usual, 0.5 = on conditions, 0 = unsuitable: the trade's three grades as numbers to compare. */
export type Grade = 1 | 0.5 | 0;

/** What is known of a core in a fluid, and from whom. */
export interface FluidCoreCell {
  readonly grade: Grade;
  /** why, in a clause; what the condition is */
  readonly why: string;
  readonly source: string;
}

type Family = 'ptfe' | 'nbr' | 'cpe' | 'epdm' | 'silicone' | 'rubber';

const FAMILIES: Record<Hose['core'], Family> = {
  'ptfe-smooth': 'ptfe',
  'ptfe-convoluted': 'ptfe',
  nbr: 'nbr',
  cpe: 'cpe',
  epdm: 'epdm',
  silicone: 'silicone',
  'synthetic-rubber': 'rubber',
};

/** Common-handbook consensus, from memory: what nobody here has read is said to be so. */
const MEMORY = 'handbooks of elastomers (from memory)';
const RACE_PTFE = 'lsxmag.com, "PTFE the go-to technology"';
const FUEL_AGES =
  'mustangforum.uk t=8712 and Hot Rod, "When good hoses go bad": pump petrol permeates rubber and its additives age it';
const RACE_FUEL =
  'phenixindustries.com, "What is the useful life of your race car plumbing": methanol and race fuel rubber every couple of years';
const EPDM_OIL = 'trelleborg.com, "EPDM or NBR": EPDM swells in mineral oil';
const SILICONE_OIL = 'fireturdracing.com 2018-05-03: a silicone hose as turbo drain melted and pulled from its fitting';

const EXHAUST_HOSE =
  'SAE J2006 and ISO 13363, their scopes: hose of its own kind for wet exhausts; seamagazine.com, "Exhaust systems need regular inspections": marked so';

const usual = (source: string, why = 'usual'): FluidCoreCell => ({ grade: 1, why, source });
const onCondition = (why: string, source: string): FluidCoreCell => ({ grade: 0.5, why, source });
const unsuitable = (why: string, source: string): FluidCoreCell => ({ grade: 0, why, source });

const ptfeFuel = usual(RACE_PTFE, 'usual, where its bore is marked conductive');
const rubberPetrol = onCondition('petrol permeates it, smells, and ages it', FUEL_AGES);
const rubberAlcohol = onCondition('alcohol ages it: a couple of years at most', RACE_FUEL);
const wetExhaust = onCondition('only hose that is made and marked for wet exhausts', EXHAUST_HOSE);
const swells = unsuitable('it swells and softens in it', MEMORY);

const TABLE: Record<Family, Partial<Record<Fluid, FluidCoreCell>>> = {
  ptfe: {
    'engine-oil': usual(MEMORY),
    petrol: ptfeFuel,
    e85: ptfeFuel,
    methanol: ptfeFuel,
    avgas: ptfeFuel,
    diesel: usual(MEMORY),
    coolant: usual(MEMORY),
    'raw-water': usual(MEMORY),
  },
  nbr: {
    'engine-oil': usual('FAA-H-8083-30: Buna-N is excellent with petroleum products'),
    petrol: rubberPetrol,
    e85: rubberAlcohol,
    methanol: rubberAlcohol,
    avgas: usual('FAA-H-8083-30: Buna-N is excellent with petroleum products', 'usual, and limited in life'),
    diesel: usual(MEMORY),
    coolant: onCondition('hot glycol hardens it', MEMORY),
    'raw-water': onCondition(
      'only where it is reinforced against collapse',
      'boattest.com, "A hose is not just a hose"',
    ),
    'exhaust-water': wetExhaust,
  },
  cpe: {
    'engine-oil': usual('RMA Hose Handbook, "Rubbers used in hose": CM has good oil resistance'),
    petrol: rubberPetrol,
    e85: rubberAlcohol,
    methanol: rubberAlcohol,
    avgas: rubberPetrol,
    diesel: onCondition('its maker has to list it', MEMORY),
    coolant: onCondition('its maker has to list it', MEMORY),
    'raw-water': onCondition(
      'only where it is reinforced against collapse',
      'boattest.com, "A hose is not just a hose"',
    ),
    'exhaust-water': wetExhaust,
  },
  epdm: {
    'engine-oil': unsuitable('it swells in mineral oil', EPDM_OIL),
    petrol: swells,
    e85: swells,
    methanol: onCondition('good in neat methanol, not where oil or petrol is in it', MEMORY),
    avgas: swells,
    diesel: swells,
    coolant: usual(MEMORY, 'usual; keep oil off it'),
    'raw-water': usual(MEMORY),
    'exhaust-water': wetExhaust,
  },
  silicone: {
    'engine-oil': unsuitable('it softens in hot oil', SILICONE_OIL),
    petrol: swells,
    e85: swells,
    methanol: onCondition('its maker has to list it', MEMORY),
    avgas: swells,
    diesel: swells,
    coolant: usual(MEMORY, 'usual; keep oil off it'),
    'raw-water': onCondition(
      'only where it is reinforced against collapse',
      'boattest.com, "A hose is not just a hose"',
    ),
    'exhaust-water': wetExhaust,
  },
  rubber: {
    'engine-oil': usual('FAA AC 43.13-1B Table 9-3: hydraulic, oil and fuel systems'),
    petrol: rubberPetrol,
    e85: rubberAlcohol,
    methanol: rubberAlcohol,
    avgas: usual('FAA AC 43.13-1B Table 9-3: hydraulic, oil and fuel systems', 'usual, and limited in life'),
    diesel: usual(MEMORY),
    coolant: onCondition('its maker has to list it', MEMORY),
    'raw-water': onCondition(
      'only where it is reinforced against collapse',
      'boattest.com, "A hose is not just a hose"',
    ),
    'exhaust-water': wetExhaust,
  },
};

/**
 * How a hose's core bears a fluid, by the trade's tables: defaults until the hose's own maker is asked, never a release.
 * undefined for air, for a fluid of no kind that is named, and where nothing was found.
 */
export function fluidCoreCell(core: Hose['core'], fluid: Fluid): FluidCoreCell | undefined {
  return TABLE[FAMILIES[core]][fluid];
}
