import { expect, test } from 'vitest';
import { makeSheets } from '../../../shared/sheets/index.ts';
import { sampleInput } from '../../arbitraries/reports.ts';

test('the papers of a project are a cut list and one PDF of all runs', async () => {
  const files = await makeSheets(sampleInput());
  expect(files.map((f) => f.path)).toEqual(['cut-list.csv', 'build-sheets.pdf']);
  expect(new TextDecoder().decode(files[1]!.bytes.subarray(0, 5))).toBe('%PDF-');
});
test('by option every picked hose has a PDF of its own as well', async () => {
  const files = await makeSheets(sampleInput(), { runs: ['turbo-drain'], perRun: true });
  expect(files.map((f) => f.path)).toEqual(['cut-list.csv', 'build-sheets.pdf', 'build-sheet-turbo-drain.pdf']);
});
