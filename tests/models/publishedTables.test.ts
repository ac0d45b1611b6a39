import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { columnsOfSchema } from '../../shared/document/parts/columns.ts';
import { tableCsv } from '../../shared/document/parts/partTableCsv.ts';
import { PUBLISHED_CUT_OFFS } from '../../shared/document/parts/published/cutOffs.ts';
import { FLARE_SIZES } from '../../shared/document/parts/published/flareSizes.ts';
import { FlareSize, PublishedCutOff } from '../../shared/document/parts/published/schema.ts';

const FOLDER = new URL('../../models/parts/published/', import.meta.url);
const TABLES = {
  'cut-offs.csv': tableCsv(columnsOfSchema(PublishedCutOff), PUBLISHED_CUT_OFFS),
  'flare-37.csv': tableCsv(columnsOfSchema(FlareSize), FLARE_SIZES),
} as const;

// WRITE_MODELS=1 writes the files anew; without it they are only compared.
if (process.env['WRITE_MODELS'] === '1')
  for (const [name, text] of Object.entries(TABLES)) writeFileSync(new URL(name, FOLDER), text);

test.each(Object.entries(TABLES))('%s is what the program proposes from, cell for cell', (name, text) => {
  expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(text);
});

test('every row is sound and names its source', () => {
  for (const row of PUBLISHED_CUT_OFFS) expect(PublishedCutOff.safeParse(row).error).toBeUndefined();
  for (const row of FLARE_SIZES) expect(FlareSize.safeParse(row).error).toBeUndefined();
  const names = PUBLISHED_CUT_OFFS.map(({ table, fitting, size }) => `${table} ${fitting} ${size}`);
  expect(new Set(names).size).toBe(names.length);
});

const navy = PUBLISHED_CUT_OFFS.filter(({ fitting }) => fitting === 'straight, flared');
const armyPairs = PUBLISHED_CUT_OFFS.filter(({ fitting }) => fitting === 'swivel, straight');

describe('cut-off factors', () => {
  // NAVEDTRA 14018 table 5-2, p. 5-12; TM 1-1500-204-23-2 table 4-22, p. 4-64. Typed from them, inches.
  const PRINTED: Readonly<Record<string, Readonly<Record<string, number>>>> = {
    'straight, flared': { 3: 0.7, 4: 0.74, 5: 0.77, 6: 0.81, 8: 0.93, 10: 1.05, 12: 1.13, 16: 1.3, 20: 1.44, 24: 1.66 },
    MS24587: { 3: 0.6, 4: 0.6, 5: 0.7, 6: 0.77, 8: 0.94, 10: 1, 12: 1, 16: 0.94, 20: 0.99, 24: 1.09, 32: 1.24 },
    'MS87018 / M83798/1': {
      3: 0.64,
      4: 0.65,
      5: 0.7,
      6: 0.76,
      8: 0.94,
      10: 0.99,
      12: 1,
      16: 1.16,
      20: 1.34,
      24: 1.44,
      32: 1.62,
    },
    'swivel, straight': { 3: 1.4, 4: 1.48, 5: 1.54, 6: 1.62, 8: 1.86, 10: 2.1, 12: 2.26, '16Z': 2.6, '20Z': 2.88 },
    'swivel, 45 degree': { 3: 2.16, 4: 2.36, 5: 2.44, 6: 2.58, 8: 3.58, 10: 3.16, 12: 4.1, '16Z': 4.28, '20Z': 4.84 },
    'swivel, 90 degree': { 3: 1.72, 4: 1.82, 5: 1.94, 6: 2.06, 8: 2.62, 10: 2.82, 12: 3.84, '16Z': 4.1, '20Z': 4.68 },
    'flange, straight': { 8: 2.54, 10: 2.7, 12: 3.1, '16Z': 3.22, '20Z': 3.38 },
    'flange, 45 degree': { 8: 2.5, 10: 2.84, 12: 3.89, '16Z': 3.96, '20Z': 4.44 },
    'flange, 90 degree': { 8: 2.42, 10: 2.82, 12: 3.84, '16Z': 4.1, '20Z': 4.68 },
  };

  test('every printed figure, and no other', () => {
    const shipped: Record<string, Record<string, number>> = {};
    for (const { fitting, size, printedIn } of PUBLISHED_CUT_OFFS)
      shipped[fitting] = { ...shipped[fitting], [size]: printedIn };
    expect(shipped).toEqual(PRINTED);
  });

  test('the Army pair value is twice the Navy single one in nine sizes, so half of it is proposed', () => {
    expect(armyPairs).toHaveLength(9);
    for (const pair of armyPairs) {
      const single = navy.find(({ dash }) => dash === pair.dash);
      expect(pair.printedIn).toBeCloseTo(2 * (single?.printedIn ?? 0), 9);
      expect([pair.counts, single?.counts]).toEqual(['pair', 'one']);
      expect(pair.oneFittingMm).toBe(single?.oneFittingMm);
      expect(pair.oneFittingMm).toBeCloseTo((pair.printedIn * 25.4) / 2, 3);
    }
  });

  test('the -8 45 degree 3.58 in is doubted, alone; a figure that is doubted or unsaid gives no C', () => {
    const doubted = PUBLISHED_CUT_OFFS.filter(({ doubt }) => doubt !== undefined);
    expect(doubted.map(({ fitting, size, printedIn }) => [fitting, size, printedIn])).toEqual([
      ['swivel, 45 degree', '8', 3.58],
    ]);
    for (const row of PUBLISHED_CUT_OFFS)
      expect(row.oneFittingMm === undefined).toBe(row.counts === 'not-said' || row.doubt !== undefined);
  });
});

describe('37 degree flare sizes', () => {
  test('the tube is so many sixteenths of an inch as the dash says', () => {
    for (const { dash, tubeOutsideIn } of FLARE_SIZES) expect(inches(tubeOutsideIn)).toBe(dash / 16);
  });

  // MacDon M205 operator manual table 8.10; TM 55-1520-240-23-1 para 1-13, nut hex.
  test.each([
    [3, '3/8-24', undefined],
    [4, '7/16-20', 14.288],
    [6, '9/16-18', 17.463],
    [8, '3/4-16', 22.225],
    [10, '7/8-14', 25.4],
    [12, '1 1/16-12', 31.75],
    [16, '1 5/16-12', 38.1],
    [20, '1 5/8-12', 50.8],
    [40, '3-12', undefined],
  ])('-%d: thread %s, hex %s mm', (dash, thread, hexMm) => {
    const size = FLARE_SIZES.find((one) => one.dash === dash);
    expect([size?.thread, size?.nutHexMm]).toEqual([thread, hexMm]);
  });

  test('the hex is wider than its thread', () => {
    for (const { thread, nutHexIn } of FLARE_SIZES)
      if (nutHexIn !== undefined) expect(inches(nutHexIn)).toBeGreaterThan(inches(thread.replace(/-\d+$/, '')));
  });
});

type Stored = {
  tables: { id: string; columns: string[]; rows: { tag: string; cells: (string | number | null)[] }[] }[];
};
const stored = new URL('../../../shared/reference/published-values.json', import.meta.url);
const here = existsSync(stored);
const said = here ? '' : ' (skipped: the table of check values is not beside the checkout)';

describe.skipIf(!here)(`every shipped cell agrees with the table of check values beside the checkout${said}`, () => {
  const tables = here ? (JSON.parse(readFileSync(stored, 'utf8')) as Stored).tables : [];
  const rowsOf = (id: string) => tables.find((t) => t.id === id)?.rows ?? [];
  const printed = (fitting: string, dash: number) =>
    PUBLISHED_CUT_OFFS.find((cell) => cell.fitting === fitting && cell.dash === dash)?.printedIn;

  test('3.4: one fitting and the pair', () => {
    expect(rowsOf('3.4')).toHaveLength(navy.length);
    for (const { tag, cells } of rowsOf('3.4')) {
      const dash = -Number(cells[0]);
      expect(tag).toBe('SEEN');
      expect([printed('straight, flared', dash), printed('swivel, straight', dash) ?? null]).toEqual([
        cells[1],
        cells[3],
      ]);
    }
  });

  test('3.5: all columns of the Army table', () => {
    const fittings = ['swivel', 'flange'].flatMap((f) =>
      ['straight', '45 degree', '90 degree'].map((a) => `${f}, ${a}`),
    );
    expect(rowsOf('3.5')).toHaveLength(9);
    for (const { cells } of rowsOf('3.5')) {
      const of = (fitting: string) =>
        PUBLISHED_CUT_OFFS.find((c) => c.fitting === fitting && c.size === cells[0])?.printedIn ?? null;
      expect([cells[0], ...fittings.map(of)]).toEqual(cells);
    }
  });

  test('3.6: the two other rows of the Navy table', () => {
    const [table] = tables.filter((t) => t.id === '3.6');
    for (const { cells } of rowsOf('3.6'))
      expect(table?.columns.slice(1).map((size) => printed(String(cells[0]), -Number(size)))).toEqual(cells.slice(1));
  });

  test('4.1 and 1.4a: tube, thread, hex', () => {
    expect(rowsOf('4.1').map(({ cells }) => [-Number(cells[0]), cells[1], cells[2]])).toEqual(
      FLARE_SIZES.map((s) => [s.dash, inches(s.tubeOutsideIn), s.thread.replace(' ', '-')]),
    );
    expect(rowsOf('1.4a').map(({ cells }) => [-Number(cells[0]), String(cells[2]).replace('-', ' ')])).toEqual(
      FLARE_SIZES.flatMap((s) => (s.nutHexIn === undefined ? [] : [[s.dash, s.nutHexIn]])),
    );
  });
});

/** "1 3/16" and "2" alike. */
function inches(text: string): number {
  return text
    .split(' ')
    .map((word) => word.split('/').map(Number))
    .reduce((sum, [over = 0, under = 1]) => sum + over / under, 0);
}
