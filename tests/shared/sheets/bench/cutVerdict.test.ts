import { expect, test } from 'vitest';
import { cutVerdict, findingsOf } from '../../../../shared/sheets/bench/cutVerdict.ts';
import { COOLER_LAY, FINDINGS, REPORT } from '../../../arbitraries/reports.ts';

const hash = REPORT.project.inputHash;

test('a laid run with things to look at may be cut', () => {
  expect(cutVerdict({ report: REPORT }, 'cooler-feed')).toEqual({ mayCut: true, reasons: [] });
  expect(cutVerdict({ report: REPORT, currentInputHash: hash }, 'cooler-feed').mayCut).toBe(true);
});
test('a stop, a near miss, no way, no lay and a changed project each forbid the saw, all reasons told', () => {
  expect(cutVerdict({ report: REPORT }, 'fuel-feed').reasons).toHaveLength(2);
  expect(cutVerdict({ report: REPORT }, 'scavenge').mayCut).toBe(false);
  expect(cutVerdict({ report: REPORT }, 'never-laid').reasons[0]).toContain('not been laid');
  expect(cutVerdict({ report: REPORT, currentInputHash: 'other' }, 'cooler-feed').reasons[0]).toContain('changed');
  const nearMiss = { ...COOLER_LAY, outcome: 'near-miss' as const };
  expect(cutVerdict({ report: { ...REPORT, lays: [nearMiss], findings: [] } }, 'cooler-feed').mayCut).toBe(false);
});
test('a stop forbids even where its rule was overridden: then it breaks the value the user allowed', () => {
  const stop = { ...FINDINGS[2]!, run: 'cooler-feed', overrideReason: 'short race' };
  expect(cutVerdict({ report: { ...REPORT, findings: [stop] } }, 'cooler-feed').mayCut).toBe(false);
});
test('a reason that another one contains is told once', () => {
  const stop = { ...FINDINGS[2]!, run: 'cooler-feed', message: 'Near miss: bends too tight' };
  const lay = { ...COOLER_LAY, outcome: 'near-miss' as const, reason: 'bends too tight' };
  const { reasons } = cutVerdict({ report: { ...REPORT, lays: [lay], findings: [stop, stop] } }, 'cooler-feed');
  expect(reasons).toEqual(['Near miss: bends too tight']);
});
test('findings come gravest first and only those of the run', () => {
  const mixed = [FINDINGS[1]!, { ...FINDINGS[2]!, run: 'cooler-feed' }, FINDINGS[0]!];
  const sorted = findingsOf({ ...REPORT, findings: [...mixed, FINDINGS[2]!] }, 'cooler-feed');
  expect(sorted.map((f) => f.severity)).toEqual(['stop', 'look', 'note']);
});
test('goes by the hash of the run itself where the lay has one: an edit of another run forbids nothing here', () => {
  const lays = REPORT.lays.map((lay) => ({ ...lay, inputHash: `hash of ${lay.run}` }));
  const report = { ...REPORT, lays };
  const now = Object.fromEntries(lays.map((lay) => [lay.run, lay.inputHash]));
  const input = { report, currentInputHash: 'another project', currentRunHashes: now };
  expect(cutVerdict(input, 'cooler-feed').mayCut).toBe(true);
  const edited = { ...input, currentRunHashes: { ...now, 'cooler-feed': 'edited' } };
  expect(cutVerdict(edited, 'cooler-feed').reasons[0]).toContain('changed');
});
