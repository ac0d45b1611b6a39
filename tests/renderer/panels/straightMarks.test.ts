import { describe, expect, it } from 'vitest';
import { clockView } from '../../../renderer/panels/runs/clockView.ts';
import { clockMarks } from '../../../renderer/panels/straightView/clockMarks.ts';
import { dressOf } from '../../../renderer/panels/straightView/dress.ts';
import { marksInWords } from '../../../renderer/panels/straightView/marksInWords.ts';
import { readDocument } from '../../../renderer/state/readDocument.ts';
import { tablesOfSheets } from '../../../shared/document/parts/partSheet.ts';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { SAMPLE_PROJECT, sampleFiles, sampleLay } from '../sampleBench.ts';

const angle = (deg: number) => ({ clock: { kind: 'angle', deg, toleranceDeg: 3 } as const });

describe('clock marks on the straight hose', () => {
  it('stand at 6 o’clock at END A, and at END B where the clock says: 90 counter-clockwise is 3 o’clock, towards the reader', () => {
    const [a, b] = clockMarks(angle(90));
    expect(a).toEqual({ end: 'A', down: 1, hidden: false });
    expect(b?.down).toBeCloseTo(0, 12);
    expect(b?.hidden).toBe(false);
  });

  it('are on top at 180, and hidden behind the hose at 270', () => {
    expect(clockMarks(angle(180))[1]?.down).toBeCloseTo(-1, 12);
    expect(clockMarks(angle(180))[1]?.hidden).toBe(false);
    expect(clockMarks(angle(270))[1]).toMatchObject({ hidden: true });
    expect(clockMarks(angle(359.5))[1]?.hidden).toBe(false);
  });

  it('are none where the clock is free', () => {
    expect(clockMarks({ clock: { kind: 'free', reason: 'a-straight' } })).toEqual([]);
  });
});

describe('clock faces', () => {
  it('are the same from either end, with the names changed over', () => {
    const [a, b] = [clockView('A', 135), clockView('B', 135)];
    expect(a.hands).toEqual([
      { atDeg: 45, name: 'B', look: 'far' },
      { atDeg: 180, name: 'A', look: 'near' },
    ]);
    expect(b.hands.map(({ atDeg }) => atDeg)).toEqual(a.hands.map(({ atDeg }) => atDeg));
    expect(b.hands.map(({ name }) => name)).toEqual(['A', 'B']);
    expect(b.words).toContain('Seen from END B');
  });
});

const TABLES: PartTables = (() => {
  const read = readDocument(sampleFiles());
  if (!read.ok) throw new Error('the sample has problems');
  const tables = tablesOfSheets(read.value.sheets);
  return {
    ...tables,
    ends: tables.ends.map((end) => ({ ...end, collarLengthMm: 25 })),
    clamps: [{ id: 'p', widthMm: 15 } as PartTables['clamps'][number]],
  };
})();

const RUN: Run = {
  ...(SAMPLE_PROJECT.runs[0] as Run),
  supports: [
    { id: 'c1', kind: 'clamp', point: [60, 0, 0], axis: [1, 0, 0], part: 'p' },
    { id: 'w1', kind: 'waypoint', point: [40, 0, 0] },
  ],
};
const MOUTHS = { a: 18, b: 18 };

describe('what is on the straight hose', () => {
  it('is to size: collars past the shoulder, clamps as wide as their part, the sleeve 1/8 in over both', () => {
    const lay = sampleLay('feed', { outsideDiameterMm: 22 });
    const dress = dressOf(lay, { ...RUN, sleeve: 's' }, TABLES, MOUTHS);
    expect(dress.hoseDiameterMm).toBe(16);
    // A socket of 25 whose mouth is 18 in front of the shoulder is 7 past it.
    expect(dress.collars.a).toEqual({ fromMm: -7, toMm: 18, diameterMm: 24 });
    expect(dress.collars.b).toEqual({ fromMm: 82, toMm: 107, diameterMm: 24 });
    expect(dress.sleeve?.fromMm).toBeCloseTo(-7 - 3.175, 9);
    expect(dress.sleeve?.toMm).toBeCloseTo(107 + 3.175, 9);
    expect(dress.clampWidthsMm.get('c1')).toBe(15);
    expect(dressOf(lay, RUN, TABLES, MOUTHS).sleeve).toBeUndefined();
  });

  it('is told in words in the order of the hose, with the clock from both ends', () => {
    const lay = sampleLay('feed', angle(90));
    const words = marksInWords(lay, RUN, dressOf(lay, RUN, TABLES, MOUTHS), (mm) => `${mm}`);
    expect(words.slice(0, 4)).toEqual(['collar A to 18', 'Waypoint 1 at 40', 'Clamp 1 at 60', 'collar B from 82']);
    expect(words.slice(4).map((line) => line.slice(0, 15))).toEqual(['Seen from END A', 'Seen from END B']);
  });
});
