import { describe, expect, it, test } from 'vitest';
import {
  ownSheetPath,
  type PartDrawer,
  partFilesOf,
  sheetFile,
} from '../../../../shared/document/drawer/partDrawer.ts';
import {
  mergeParts,
  planImport,
  putPart,
  removePart,
  replaceParts,
} from '../../../../shared/document/drawer/partEdits.ts';
import { partUses } from '../../../../shared/document/drawer/partUses.ts';
import { readPartSheets } from '../../../../shared/document/parts/parsePartTables.ts';
import { type PartSheet, rowsOfKind, tablesOfSheets } from '../../../../shared/document/parts/partSheet.ts';
import type { Clamp, EndRow, Roll } from '../../../../shared/document/parts/schema.ts';
import { sampleEnd, sampleHose, sampleProject, sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';

const CLAMP: Clamp = {
  id: 'c-16',
  name: 'Clamp 16',
  holdsFromMm: 15,
  holdsToMm: 17,
  standOffMm: 14,
  widthMm: 15,
  material: 'steel',
  maxTemperatureC: 200,
  provenance: 'own',
  source: 'caliper',
};
const ROLL: Roll = { id: 'r-1', hose: 'hose-8', lengthMm: 900, provenance: 'own', source: 'tape' };

/** One run of hose-8 with a straight end at A and an elbow at B, sleeved; the elbow is in an example table. */
function drawer(): PartDrawer {
  const run = sampleRun({ b: { port: 'p2', end: 'elbow' }, sleeve: 'sleeve-16' });
  const sheets = [
    { path: 'parts/hoses.csv', kind: 'hoses', rows: [sampleHose(), sampleHose({ id: 'spare' })] },
    { path: 'parts/ends.example.csv', kind: 'ends', rows: [sampleEnd({ id: 'elbow', bendAngleDeg: 90 })] },
    { path: 'parts/ends.csv', kind: 'ends', rows: [sampleEnd()] },
    { path: 'parts/sleeves.csv', kind: 'sleeves', rows: [sampleSleeve()] },
  ] satisfies PartSheet[];
  const tables = {
    hoses: ['parts/hoses.csv'],
    ends: ['parts/ends.example.csv', 'parts/ends.csv'],
    sleeves: ['parts/sleeves.csv'],
  };
  return { project: { ...sampleProject(), tables, runs: [run] }, sheets };
}

const idsOf = (of: PartDrawer, kind: 'hoses' | 'ends' | 'clamps' | 'rolls'): string[] =>
  rowsOfKind(of.sheets, kind).map(({ id }) => id);

describe('putting a part in', () => {
  it('goes over the row of its id, in its own file', () => {
    const put = putPart(drawer(), 'ends', sampleEnd({ id: 'elbow', bendAngleDeg: 45 }));
    expect(put.sheets[1]).toMatchObject({ path: 'parts/ends.example.csv', rows: [{ id: 'elbow', bendAngleDeg: 45 }] });
    expect(put.sheets[2]).toEqual(drawer().sheets[2]);
  });

  it('a new row goes at the end of the own table, never among example data', () => {
    const put = putPart(drawer(), 'ends', sampleEnd({ id: 'new' }));
    expect(put.sheets[2]?.rows.map(({ id }) => id)).toEqual(['end-8-0', 'new']);
    expect(put.project.tables).toEqual(drawer().project.tables);
  });

  it('makes the table where there is none, and names it in the project', () => {
    const put = putPart(drawer(), 'clamps', CLAMP);
    expect(put.project.tables.clamps).toEqual(['parts/own-clamps.csv']);
    expect(put.sheets.at(-1)).toEqual({ path: 'parts/own-clamps.csv', kind: 'clamps', rows: [CLAMP] });
    const onlyExample = {
      ...drawer().project,
      tables: { ...drawer().project.tables, ends: ['parts/ends.example.csv'] },
    };
    const from = { project: onlyExample, sheets: drawer().sheets.filter(({ path }) => path !== 'parts/ends.csv') };
    expect(ownSheetPath(from, 'ends')).toBe('parts/own-ends.csv');
    expect(putPart(from, 'ends', sampleEnd()).project.tables.ends).toEqual([
      'parts/ends.example.csv',
      'parts/own-ends.csv',
    ]);
  });
});

describe('taking a part out', () => {
  it('takes out what nothing uses', () => {
    const out = removePart(drawer(), 'hoses', 'spare');
    expect(out.ok && idsOf(out.value, 'hoses')).toEqual(['hose-8']);
  });

  test.each([
    ['hoses', 'hose-8', 'Run 1'],
    ['ends', 'end-8-0', 'Run 1'],
    ['ends', 'elbow', 'Run 1'],
    ['sleeves', 'sleeve-16', 'Run 1'],
  ] as const)('refuses %s %s, used by %s', (kind, id, user) => {
    const out = removePart(drawer(), kind, id);
    expect(out.ok ? [] : out.problems).toEqual([
      { path: id, message: `in use by ${user}; choose another part there first` },
    ]);
  });

  it('refuses a clamp on a support, an adapter on a port, a hose on a roll', () => {
    const { project, sheets } = putPart(drawer(), 'rolls', { ...ROLL, hose: 'spare' });
    const [run] = project.runs;
    const [port] = project.ports;
    if (run === undefined || port === undefined) throw new Error('no run');
    const held: PartDrawer = {
      sheets,
      project: {
        ...project,
        runs: [{ ...run, supports: [{ id: 's', kind: 'clamp', point: [0, 0, 0], axis: [1, 0, 0], part: 'c-16' }] }],
        ports: [{ ...port, adapters: [{ adapter: 'orb', outlet: 'straight' }] }, ...project.ports.slice(1)],
      },
    };
    expect(partUses(held, 'clamps', 'c-16')).toEqual(['Run 1']);
    expect(partUses(held, 'adapters', 'orb')).toEqual(['Port 1']);
    expect(partUses(held, 'hoses', 'spare')).toEqual(['roll r-1']);
    expect(partUses(held, 'rolls', 'r-1')).toEqual([]);
  });
});

describe('bringing rows in', () => {
  const rows = [
    sampleEnd({ id: 'new' }),
    sampleEnd({ id: 'elbow', bendAngleDeg: 45 }),
    Object.fromEntries(Object.entries(sampleEnd()).reverse()) as unknown as EndRow,
  ];

  it('is told before it is done', () => {
    expect(planImport(drawer(), 'ends', rows)).toEqual({
      fresh: ['new'],
      changed: ['elbow'],
      same: ['end-8-0'],
      others: [],
    });
    expect(planImport(drawer(), 'ends', rows.slice(0, 1)).others).toEqual(['elbow', 'end-8-0']);
  });

  it('merged: changed rows where they stood, new ones at the end, others kept', () => {
    const merged = mergeParts(drawer(), 'ends', rows);
    expect(idsOf(merged, 'ends')).toEqual(['elbow', 'end-8-0', 'new']);
    expect(rowsOfKind(merged.sheets, 'ends')[0]?.bendAngleDeg).toBe(45);
    const again = mergeParts(merged, 'ends', rows);
    expect(again).toBe(merged);
  });

  it('replaced: one own table of just these rows', () => {
    const done = replaceParts(drawer(), 'ends', rows);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    expect(idsOf(done.value, 'ends')).toEqual(['new', 'elbow', 'end-8-0']);
    expect(done.value.project.tables.ends).toEqual(['parts/ends.csv']);
    expect(idsOf(done.value, 'hoses')).toEqual(['hose-8', 'spare']);
  });

  it('replaced: refused with every part in use that would go', () => {
    const done = replaceParts(drawer(), 'ends', rows.slice(0, 1));
    expect(done.ok ? [] : done.problems.map(({ path }) => path)).toEqual(['elbow', 'end-8-0']);
  });
});

it('a drawer written to files reads back as it was', () => {
  const full = putPart(putPart(drawer(), 'clamps', CLAMP), 'rolls', ROLL);
  const read = readPartSheets(partFilesOf(full.project, full.sheets.map(sheetFile)));
  expect(read).toEqual({ ok: true, value: [...full.sheets] });
  expect(tablesOfSheets(full.sheets).clamps).toEqual([CLAMP]);
});
