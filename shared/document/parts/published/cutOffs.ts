import { inchesToMm } from '../../../base/units.ts';
import type { PublishedCutOff } from './schema.ts';

const NAVY = 'NAVEDTRA 14018 table 5-2';
const NAVY_SOURCE = 'NAVEDTRA 14018, table 5-2 "Cut-off factor for one fitting", p. 5-12';
const ARMY = 'TM 1-1500-204-23-2 table 4-22';
const ARMY_SOURCE = 'US Army TM 1-1500-204-23-2, table 4-22, p. 4-64';
const ARMY_PAIR =
  ' (column A: twice the one-fitting row of NAVEDTRA 14018 table 5-2 in all nine sizes, hence a pair; the text read does not say so)';
const ARMY_UNSAID = ' (the text read does not say whether the figure is for one fitting or for two)';

type Cells = readonly (readonly [size: string, inches: number])[];
type Column = Pick<PublishedCutOff, 'table' | 'fitting' | 'form' | 'bendAngleDeg' | 'counts' | 'source'>;

/** Figures that break the run of their column by an inch: misprints, shown and never used. */
const DOUBTED: readonly { readonly fitting: string; readonly size: string; readonly doubt: string }[] = [
  {
    fitting: 'swivel, 45 degree',
    size: '8',
    doubt: 'out of line with its neighbours, 2.58 in at -6 and 3.16 in at -10: probably a misprint for 2.8 in or so',
  },
];

/** Typed from the tables; a size of the Army's table ends in Z for its heavier hose. */
export const PUBLISHED_CUT_OFFS: readonly PublishedCutOff[] = [
  ...cells(navy('straight, flared', { form: 'nut', bendAngleDeg: 0 }), [
    ['3', 0.7],
    ['4', 0.74],
    ['5', 0.77],
    ['6', 0.81],
    ['8', 0.93],
    ['10', 1.05],
    ['12', 1.13],
    ['16', 1.3],
    ['20', 1.44],
    ['24', 1.66],
  ]),
  ...cells(navy('MS24587'), [
    ['3', 0.6],
    ['4', 0.6],
    ['5', 0.7],
    ['6', 0.77],
    ['8', 0.94],
    ['10', 1],
    ['12', 1],
    ['16', 0.94],
    ['20', 0.99],
    ['24', 1.09],
    ['32', 1.24],
  ]),
  ...cells(navy('MS87018 / M83798/1'), [
    ['3', 0.64],
    ['4', 0.65],
    ['5', 0.7],
    ['6', 0.76],
    ['8', 0.94],
    ['10', 0.99],
    ['12', 1],
    ['16', 1.16],
    ['20', 1.34],
    ['24', 1.44],
    ['32', 1.62],
  ]),
  ...cells(army('swivel, straight', 'nut', 0), [
    ['3', 1.4],
    ['4', 1.48],
    ['5', 1.54],
    ['6', 1.62],
    ['8', 1.86],
    ['10', 2.1],
    ['12', 2.26],
    ['16Z', 2.6],
    ['20Z', 2.88],
  ]),
  ...cells(army('swivel, 45 degree', 'nut', 45), [
    ['3', 2.16],
    ['4', 2.36],
    ['5', 2.44],
    ['6', 2.58],
    ['8', 3.58],
    ['10', 3.16],
    ['12', 4.1],
    ['16Z', 4.28],
    ['20Z', 4.84],
  ]),
  ...cells(army('swivel, 90 degree', 'nut', 90), [
    ['3', 1.72],
    ['4', 1.82],
    ['5', 1.94],
    ['6', 2.06],
    ['8', 2.62],
    ['10', 2.82],
    ['12', 3.84],
    ['16Z', 4.1],
    ['20Z', 4.68],
  ]),
  ...cells(army('flange, straight', 'flange', 0), [
    ['8', 2.54],
    ['10', 2.7],
    ['12', 3.1],
    ['16Z', 3.22],
    ['20Z', 3.38],
  ]),
  ...cells(army('flange, 45 degree', 'flange', 45), [
    ['8', 2.5],
    ['10', 2.84],
    ['12', 3.89],
    ['16Z', 3.96],
    ['20Z', 4.44],
  ]),
  ...cells(army('flange, 90 degree', 'flange', 90), [
    ['8', 2.42],
    ['10', 2.82],
    ['12', 3.84],
    ['16Z', 4.1],
    ['20Z', 4.68],
  ]),
];

function navy(fitting: string, known: Pick<Column, 'form' | 'bendAngleDeg'> = {}): Column {
  return { table: NAVY, fitting, ...known, counts: 'one', source: NAVY_SOURCE };
}

function army(fitting: string, form: 'nut' | 'flange', bendAngleDeg: number): Column {
  const isPair = form === 'nut' && bendAngleDeg === 0;
  const source = `${ARMY_SOURCE}${isPair ? ARMY_PAIR : ARMY_UNSAID}`;
  return { table: ARMY, fitting, form, bendAngleDeg, counts: isPair ? 'pair' : 'not-said', source };
}

function cells({ table, fitting, form, bendAngleDeg, counts, source }: Column, of: Cells): PublishedCutOff[] {
  return of.map(([size, printedIn]) => {
    const doubt = DOUBTED.find((one) => table === ARMY && one.fitting === fitting && one.size === size)?.doubt;
    const usable = doubt === undefined && counts !== 'not-said';
    return {
      table,
      fitting,
      size,
      dash: Number.parseInt(size, 10),
      ...(form === undefined ? {} : { form }),
      ...(bendAngleDeg === undefined ? {} : { bendAngleDeg }),
      printedIn,
      counts,
      ...(usable ? { oneFittingMm: rounded(inchesToMm(printedIn) / (counts === 'pair' ? 2 : 1)) } : {}),
      ...(doubt === undefined ? {} : { doubt }),
      read: 'seen',
      source,
    };
  });
}

/** Printed to a hundredth of an inch, 0.254 mm: a thousandth of a mm loses nothing of it. */
function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
