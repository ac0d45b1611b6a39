import { expect, test } from 'vitest';
import { makeSheets } from '../../../shared/sheets/index.ts';
import { sampleInput } from '../../arbitraries/reports.ts';

test('the papers of a project are a cut list, one PDF of all runs and one of their tags', async () => {
  const files = await makeSheets(sampleInput());
  expect(files.map((f) => f.path)).toEqual(['cut-list.csv', 'build-sheets.pdf', 'tags.pdf']);
  expect(new TextDecoder().decode(files[1]!.bytes.subarray(0, 5))).toBe('%PDF-');
});
test('by option every picked hose has a PDF of its own as well', async () => {
  const files = await makeSheets(sampleInput(), { runs: ['turbo-drain'], perRun: true });
  expect(files.map((f) => f.path)).toEqual([
    'cut-list.csv',
    'build-sheets.pdf',
    'tags.pdf',
    'build-sheet-turbo-drain.pdf',
  ]);
});

test('only the papers that are asked for are drawn; what has nothing on it is none', async () => {
  const files = await makeSheets(sampleInput(), { papers: ['tags.pdf', 'stock-cuts.csv'] });
  expect(files.map((f) => f.path)).toEqual(['tags.pdf']);
});
