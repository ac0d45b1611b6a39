import { beforeAll, expect, test } from 'vitest';
import { openPaper, type Paper } from '../../../../shared/sheets/layout/paper.ts';
import { sheetFonts } from '../../../arbitraries/reports.ts';

let paper: Paper;
beforeAll(async () => {
  paper = await openPaper({ size: 'A4', fonts: sheetFonts(), title: 'test', printedOn: '2026-03-14' });
});

test('wrapped lines fit and lose no word', () => {
  const text = 'The hose comes to 63.4 mm (2 1/2 in) from the exhaust manifold; the rule asks for 77.2 mm.';
  for (const width of [25, 40, 80]) {
    const lines = paper.regular.wrap(text, 8, width);
    for (const line of lines) expect(paper.regular.widthMm(line, 8)).toBeLessThanOrEqual(width + 0.5);
    expect(lines.join(' ').replaceAll('\u00a0', ' ')).toBe(text);
  }
});
test('a number stays with its fraction and its unit', () => {
  for (let width = 14; width < 40; width += 1)
    for (const line of paper.regular.wrap('cut at least 798.8 mm (31 1/2 in) of sleeve', 8, width)) {
      expect(line).not.toMatch(/^1\/2|^in\)|^mm/);
    }
});
test('a word longer than the line is broken, not lost', () => {
  const lines = paper.regular.wrap('a-very-long-run-identity-that-goes-on-and-on', 8, 20);
  expect(lines.length).toBeGreaterThan(1);
  expect(lines.join('')).toBe('a-very-long-run-identity-that-goes-on-and-on');
});
test('a letter the type lacks shows as a box', () => {
  expect(paper.regular.shown('油 Öl')).toBe('▯ Öl');
});
test('a day that is none is our own mistake', async () => {
  const bad = openPaper({ size: 'A4', fonts: sheetFonts(), title: 'test', printedOn: 'today' });
  await expect(bad).rejects.toThrow('openPaper');
});
