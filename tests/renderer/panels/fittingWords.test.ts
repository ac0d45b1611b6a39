import { expect, it } from 'vitest';
import { fittingWords } from '../../../renderer/panels/findings/fittingWords.ts';
import { readDocument } from '../../../renderer/state/readDocument.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { tablesOfSheets } from '../../../shared/document/parts/partSheet.ts';
import { resolveProject } from '../../../shared/document/project/resolve.ts';
import { SAMPLE_PROJECT, sampleFiles, sampleLay, sampleReport } from '../sampleBench.ts';

it('tells what a hose waits for, what it is led through, its ends before its clamps are tight, and its wrenches', () => {
  const read = readDocument(sampleFiles());
  if (!read.ok) throw new Error('the sample has problems');
  const [feed, drain] = SAMPLE_PROJECT.runs;
  if (feed === undefined || drain === undefined) throw new Error('the sample has two runs');
  const supports = [
    { id: 'p', kind: 'pass-through', name: 'Firewall', point: [20, 0, 0], axis: [1, 0, 0] },
    { id: 'c', kind: 'clamp', point: [60, 0, 0], axis: [1, 0, 0] },
    { id: 'w', kind: 'waypoint', point: [70, 0, 0] },
  ] satisfies typeof feed.supports;
  const project = { ...SAMPLE_PROJECT, runs: [{ ...feed, supports }, drain] };
  const resolved = resolveProject(project, tablesOfSheets(read.value.sheets));
  const hose = resolved.ok ? resolved.value.runs[0] : undefined;
  if (hose === undefined) throw new Error('the sample has problems');
  const swing = { goesOn: true, widestDeg: 62.7, sectors: [], inTheWay: [] };
  const hands = { before: [], places: [], a: { swing } } as unknown as NonNullable<Lay['hands']>;
  const first = { before: ['feed'], places: [] } as unknown as NonNullable<Lay['hands']>;
  const report = sampleReport([sampleLay('feed', { hands }), sampleLay('drain', { hands: first })]);
  const words = fittingWords(hose, report, project);
  expect(words[0]).toContain('after Drain');
  expect(words[1]).toBe('Led through Firewall.');
  expect(words[2]).toContain('END A on Port 1 and END B on Port 2, both by hand first');
  expect(words[3]).toContain('Clamp 1, loose');
  expect(words[4]).toContain('END A: tightened; free swing of a wrench: 62°');
  expect(words[5]).toBe('END B: tightened.');
  expect(words.join()).not.toContain('Waypoint');
});
