import Papa from 'papaparse';
import { expect, test } from 'vitest';
import type { Roll } from '../../../../shared/document/parts/schema.ts';
import {
  makeSheets,
  STOCK_CUTS_COLUMNS,
  stockCuts,
  stockCutsCsv,
  stockWords,
} from '../../../../shared/sheets/index.ts';
import { COOLER_RUN, sampleInput } from '../../../arbitraries/reports.ts';

const roll = (id: string, lengthMm: number, more: Partial<Roll> = {}): Roll => ({
  id,
  hose: COOLER_RUN.hose.id,
  lengthMm,
  provenance: 'example',
  source: 'invented for tests',
  ...more,
});
const rows = (csv: string) => Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;

test('a hose of 420.2 mm from an offcut of 500: 3 mm of kerf, 76.8 left; a roll is not begun', () => {
  const cuts = stockCuts(sampleInput(), [roll('r', 5000), roll('off', 500, { offcut: true })], ['cooler-feed']);
  expect(rows(stockCutsCsv(cuts)).map((row) => [row['piece'], row['what'], row['run'], row['length_mm']])).toEqual([
    ['off', 'cut', 'cooler-feed', '420.2'],
    ['off', 'left', '', '76.8'],
  ]);
});

test('what is forbidden is not cut, what nothing holds is told', () => {
  const cuts = stockCuts(sampleInput(), [roll('short', 420)]);
  const table = rows(stockCutsCsv(cuts));
  expect(Object.keys(table[0] ?? {})).toEqual([...STOCK_CUTS_COLUMNS]);
  expect(table.find(({ run }) => run === 'cooler-feed')).toMatchObject({ what: 'NOT HELD', length_mm: '420.2' });
  expect(table.filter(({ what }) => what === 'DO NOT CUT').map(({ run }) => run)).toEqual(['fuel-feed', 'scavenge']);
  expect(stockWords(cuts).join('\n')).toContain('cooler-feed needs 420.2 mm');
});

test('the paper is only there where there is hose in stock', async () => {
  const names = async (rolls: Roll[]) => (await makeSheets({ ...sampleInput(), rolls })).map(({ path }) => path);
  expect(await names([])).not.toContain('stock-cuts.csv');
  expect(await names([roll('r', 5000)])).toContain('stock-cuts.csv');
});
