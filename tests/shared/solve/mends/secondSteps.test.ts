import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { MendEdit } from '../../../../shared/document/mends/schema.ts';
import { secondSteps } from '../../../../shared/solve/mends/secondSteps.ts';
import type { MendTry } from '../../../../shared/solve/mends/settleMends.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleSleeve, sampleTables } from '../../../arbitraries/projects.ts';
import { sampleFinding } from '../../../renderer/sampleBench.ts';
import { resolved } from '../checks/context.ts';

const ENDS = [0, 45, 90].map((angle) => sampleEnd({ id: `end-8-${angle}`, bendAngleDeg: angle }));
const TABLES = { ...sampleTables(), ends: ENDS, sleeves: [sampleSleeve()] };

function triedWith(edit: MendEdit, words: string, findings: Finding[], worse: Finding[] = []): MendTry {
  const mended = resolved({}, TABLES);
  const lay = straightLay();
  return {
    proposal: { edit, words, how: 'anew', change: 4, toGet: ['a thing'] },
    mended,
    run: mended.runs[0]!,
    how: 'anew',
    lays: [lay],
    lay,
    findings,
    compared: { cured: [], worse, newNotes: [] },
    aimed: [],
  };
}

const seconds = (tried: MendTry) =>
  secondSteps(TABLES, tried).map(({ edit }) => (edit.kind === 'both' ? edit.second : edit));
const run = resolved().runs[0]!.run.id;
const tight = sampleFinding(run, { check: 'straightTail', severity: 'look' });
const sawed = sampleFinding(run, { check: 'chafe', severity: 'stop' });

describe('second changes on top of a first', () => {
  it('are for what its own lay wants mended, what forbids cutting first', () => {
    const [first] = secondSteps(TABLES, triedWith({ kind: 'slack', slack: 0.08 }, 'More slack, 8 %,', [tight, sawed]));
    expect(first).toMatchObject({
      edit: { kind: 'both', first: { kind: 'slack' }, second: { kind: 'sleeve', sleeve: 'sleeve-16' } },
      how: 'anew',
    });
    expect(first?.words).toMatch(/^More slack, 8 %, and a sleeve over the whole hose/);
    expect(first?.toGet[0]).toBe('a thing');
    expect(first?.change).toBeGreaterThan(4);
  });

  it('never take back the first: another end at the same side, another hose', () => {
    const turned = seconds(triedWith({ kind: 'end', side: 'a', end: 'end-8-45' }, 'An end', [tight]));
    expect(turned.length).toBeGreaterThan(0);
    expect(turned.every((edit) => edit.kind === 'end' && edit.side === 'b')).toBe(true);
    expect(seconds(triedWith({ kind: 'ends', a: 'end-8-45', b: 'end-8-45' }, 'Ends', [tight]))).toEqual([]);
    expect(seconds(triedWith({ kind: 'sleeve', sleeve: 'sleeve-16' }, 'A sleeve', [sawed]))).not.toContainEqual(
      expect.objectContaining({ kind: 'sleeve' }),
    );
  });

  it('there are none on top of two, and never many', () => {
    const both: MendEdit = { kind: 'both', first: { kind: 'bleed' }, second: { kind: 'slack', slack: 0.08 } };
    expect(secondSteps(TABLES, triedWith(both, 'Two', [tight]))).toEqual([]);
    expect(secondSteps(TABLES, triedWith({ kind: 'bleed' }, 'A bleed', [tight, sawed])).length).toBeLessThanOrEqual(6);
  });
});
