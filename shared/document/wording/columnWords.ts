import type { PartKind } from '../parts/columns.ts';
import {
  ADAPTER_FORM_WORDS,
  CORE_WORDS,
  COVER_WORDS,
  END_FORM_WORDS,
  END_MATERIAL_WORDS,
  JOINT_WORDS,
  PROVENANCE_WORDS,
} from './partWords.ts';
import { FLUID_WORDS } from './serviceWords.ts';

/** Units that the names of columns end in, as they are printed. */
const UNITS: Readonly<Record<string, string>> = {
  KgPerM: 'kg/m',
  Nmm2: 'N mm²',
  Mm: 'mm',
  Kpa: 'kPa',
  Deg: '°',
  C: '°C',
  G: 'g',
};

/** Columns whose key does not read as the trade says it. */
const LABELS: Readonly<Record<string, string>> = {
  id: 'Id',
  dash: 'Dash size',
  branchDash: 'Branch dash size',
  portDash: 'Port dash size',
  cutOffMm: 'C, cut-off',
  hexMm: 'Hex across flats',
  provenance: 'Whose figures',
  source: 'Source',
  turning: 'Turns',
  portSeat: 'Seat in the port',
  bendAngleDeg: 'Bend angle',
  minBendRadiusDatum: 'Radius measured to',
  conductiveCore: 'Core conductive',
  weightKgPerM: 'Weight',
  turnFromDeg: 'Turns from',
  turnToDeg: 'Turns to',
  pricePerM: 'Price of a metre',
};

/** What a column of a part table is called, without its unit: `Outside diameter` for outsideDiameterMm. */
export function columnLabel(key: string): string {
  const known = LABELS[key];
  if (known !== undefined) return known;
  const unit = unitKey(key);
  const bare = unit === undefined ? key : key.slice(0, -unit.length);
  const words = bare.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The unit that a column's figures are in, as it is printed; undefined where it has none. */
export function columnUnit(key: string): string | undefined {
  const unit = unitKey(key);
  return unit === undefined ? undefined : UNITS[unit];
}

function unitKey(key: string): string | undefined {
  return Object.keys(UNITS).find((unit) => key.length > unit.length && key.endsWith(unit));
}

const TURNS: Readonly<Record<string, string>> = {
  swivel: 'Turns until its nut is tight',
  range: 'Turns in a range',
  fixed: 'Does not turn',
  settable: 'Turned at will, then locked',
  taper: 'Tight somewhere in a turn (taper)',
};

const CHOICES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  core: CORE_WORDS,
  cover: COVER_WORDS,
  joint: JOINT_WORDS,
  material: END_MATERIAL_WORDS,
  provenance: PROVENANCE_WORDS,
  listedFluids: FLUID_WORDS,
  turning: TURNS,
  minBendRadiusDatum: { inside: 'Inside of the bend', centreline: 'Centreline' },
};

/** A value of a column that knows only some, in words. */
export function choiceWords(kind: PartKind, key: string, value: string): string {
  const words = key === 'form' ? (kind === 'adapters' ? ADAPTER_FORM_WORDS : END_FORM_WORDS) : (CHOICES[key] ?? {});
  return (words as Readonly<Record<string, string>>)[value] ?? value;
}
