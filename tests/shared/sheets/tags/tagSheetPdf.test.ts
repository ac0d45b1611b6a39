import { describe, expect, test } from 'vitest';
import { hoseTag } from '../../../../shared/document/tag/hoseTag.ts';
import { type SheetInput, tagSheetPdf } from '../../../../shared/sheets/index.ts';
import { COOLER_LAY, COOLER_RUN, DRAIN_LAY, DRAIN_RUN, REPORT, sampleInput } from '../../../arbitraries/reports.ts';
import { canReadPdf, pdfPages, pdfStrokes, pdfWords, WHY_SKIPPED } from '../readPdf.ts';

const CLEAN = sampleInput({
  runs: [COOLER_RUN, DRAIN_RUN],
  report: { ...REPORT, lays: [COOLER_LAY, DRAIN_LAY], findings: [] },
});

async function textOf(input: SheetInput, only?: readonly string[]): Promise<string> {
  return pdfPages(await tagSheetPdf(input, only)).join(' ');
}

test('the same input gives the same bytes', async () => {
  expect(await tagSheetPdf(CLEAN)).toEqual(await tagSheetPdf(CLEAN));
});

describe.skipIf(!canReadPdf)(`tags on paper (${canReadPdf ? 'with poppler' : WHY_SKIPPED})`, () => {
  test('every hose that may be cut has its tag, word for word as it is told elsewhere, and one for each end', async () => {
    const text = await textOf(CLEAN);
    for (const run of [COOLER_RUN, DRAIN_RUN]) {
      for (const { label, value } of hoseTag(run)) {
        expect(text).toContain(label);
        if (value !== undefined) expect(text).toContain(value);
      }
      for (const { port } of [run.a, run.b]) expect(text).toContain(`to ${port.name}`);
    }
    // On the tag of the hose and on that of the end, of two hoses.
    for (const end of [/\bEND A\b/g, /\bEND B\b/g]) expect(text.match(end)).toHaveLength(4);
    // 420.159 mm, rounded up to 0.1 mm and to 1/16 in.
    expect(text).toContain('420.2 mm (16 9/16 in)');
  });

  test('a hose that may not be cut has no tag and is named with the reason', async () => {
    const stop = {
      ...REPORT.findings[0]!,
      run: DRAIN_RUN.run.id,
      severity: 'stop',
      message: 'Too tight here.',
    } as const;
    const text = await textOf({ ...CLEAN, report: { ...CLEAN.report, findings: [stop] } });
    expect(text).toContain(`${DRAIN_RUN.run.name} (${DRAIN_RUN.run.id}): Too tight here.`);
    expect(text.match(/\bEND A\b/g)).toHaveLength(2);
    expect(text).not.toContain(`to ${DRAIN_RUN.a.port.name}`);
    expect(await textOf(CLEAN, [COOLER_RUN.run.id])).not.toContain(DRAIN_RUN.run.name);
  });

  test('what the bench wrote down stands on the tag; what it did not is a line to write on', async () => {
    const proof = { on: '2026-05-12', pressureKpa: 5250 };
    const proved = { ...COOLER_RUN, run: { ...COOLER_RUN.run, asBuilt: { proof, fittedOn: '2026-06-01' } } };
    const one = { ...CLEAN, runs: [proved] };
    const text = await textOf(one);
    for (const written of ['5250 kPa (761 psi)', '2026-05-12', '2026-06-01']) expect(text).toContain(written);
    // Level strokes of a line to write on: 70 mm; three more where nothing is written down.
    const open = async (input: SheetInput): Promise<number> =>
      pdfStrokes(await tagSheetPdf(input), 0).filter(({ points: [p, q, r] }) => {
        if (p === undefined || q === undefined || r !== undefined) return false;
        return Math.abs(p[1] - q[1]) < 0.01 && Math.abs(Math.abs(p[0] - q[0]) - 70) < 0.5;
      }).length;
    expect(await open({ ...CLEAN, runs: [COOLER_RUN] })).toBe((await open(one)) + 3);
  });

  test('nothing leaves the paper, on A4 and Letter, with many hoses and long names', async () => {
    const long = 'From the very back of the oil gallery over the bellhousing to the cooler behind the left wheel';
    const runs = Array.from({ length: 7 }, (_, i) => ({
      ...COOLER_RUN,
      run: { ...COOLER_RUN.run, id: `hose-${i}`, name: long },
      a: { ...COOLER_RUN.a, port: { ...COOLER_RUN.a.port, name: long } },
    }));
    const lays = runs.map(({ run }) => ({ ...COOLER_LAY, run: run.id }));
    for (const paper of ['A4', 'Letter'] as const) {
      const words = pdfWords(await tagSheetPdf({ ...CLEAN, paper, runs, report: { ...CLEAN.report, lays } }));
      expect(new Set(words.map(({ page }) => page)).size).toBeGreaterThan(1);
      for (const { leftMm, rightMm, topMm, bottomMm, pageWidthMm, pageHeightMm, text } of words) {
        expect(leftMm, text).toBeGreaterThan(8);
        expect(rightMm, text).toBeLessThan(pageWidthMm - 8);
        expect(topMm, text).toBeGreaterThan(5);
        expect(bottomMm, text).toBeLessThan(pageHeightMm - 3);
      }
    }
  });
});
