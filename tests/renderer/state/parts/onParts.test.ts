import { describe, expect, it } from 'vitest';
import type { OpenDocument } from '../../../../renderer/state/documentStore.ts';
import { hasUnsavedEdits } from '../../../../renderer/state/documentStore.ts';
import { fieldProblems, fieldText, readDraft } from '../../../../renderer/state/parts/draftPart.ts';
import { runState } from '../../../../renderer/state/runState.ts';
import { type Column, columnsOf, type PartKind } from '../../../../shared/document/parts/columns.ts';
import { partTableCsv } from '../../../../shared/document/parts/partTableCsv.ts';
import type { NamedFile } from '../../../../shared/document/project/projectFiles.ts';
import { sampleEnd } from '../../../arbitraries/projects.ts';
import { SAMPLE_BAY, sampleBench, sampleFiles, sampleLay, sampleReport } from '../../sampleBench.ts';

const BOTH = sampleReport([sampleLay('feed'), sampleLay('drain')]);

/** A bench with the sample project open and laid, and what was saved of it. */
async function laidBench() {
  const tables: { added: readonly NamedFile[]; changed: readonly NamedFile[] }[] = [];
  const sample = sampleBench(
    { openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: BOTH } },
    {
      saveProject: async (_text, added = [], changed = []) => {
        tables.push({ added, changed });
        return { ok: true, value: { kind: 'saved', where: 'there' } };
      },
    },
  );
  await sample.bench.openGiven();
  await sample.bench.layAll();
  return { ...sample, tables };
}

type Bench = Awaited<ReturnType<typeof laidBench>>['bench'];

function opened({ document }: Bench): OpenDocument {
  const { open } = document.getState();
  if (open === null) throw new Error('nothing is open');
  return open;
}

function column(kind: PartKind, key: string): Column {
  const found = columnsOf(kind).find((one) => one.key === key);
  if (found === undefined) throw new Error(`no column ${key}`);
  return found;
}

function type(bench: Bench, key: string, text: string, unit: 'mm' | 'in' = 'mm'): void {
  bench.onParts.type(column(bench.drawer.getState().kind, key), { text, unit });
}

const states = (bench: Bench): string[] => ['feed', 'drain'].map((id) => runState(opened(bench), id));

describe('a card of the drawer', () => {
  it('changes a part in one step back: the runs that use it go stale, the others stay', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    type(bench, 'seatToBendMm', '27.5');
    expect(states(bench)).toEqual(['clean', 'clean']);
    bench.onParts.keep();
    expect(opened(bench).tables.ends.find(({ id }) => id === 'elbow')?.seatToBendMm).toBe(27.5);
    expect(states(bench)).toEqual(['stale', 'clean']);
    expect(hasUnsavedEdits(opened(bench))).toBe(true);
    bench.document.undo();
    expect(opened(bench).tables.ends.find(({ id }) => id === 'elbow')?.seatToBendMm).toBe(20);
    expect(states(bench)).toEqual(['clean', 'clean']);
    bench.document.redo();
    expect(states(bench)).toEqual(['stale', 'clean']);
  });

  it('hands jobs the tables as they are now', async () => {
    const { bench, asked } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    type(bench, 'seatToBendMm', '27.5');
    bench.onParts.keep();
    await bench.layRun('feed');
    const { files = [] } = (asked.at(-1)?.input ?? {}) as { files?: readonly NamedFile[] };
    const text = new TextDecoder().decode(files.find(({ path }) => path === 'ends.csv')?.bytes);
    expect(text).toMatch(/^elbow,.*,27\.5,/m);
    expect(files.find(({ path }) => path === 'hoses.csv')?.bytes).toEqual(sampleFiles().files[1]?.bytes);
    expect(states(bench)).toEqual(['clean', 'clean']);
  });

  it('reads lengths in the unit they were typed in, and inches as fractions', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    type(bench, 'seatToBendMm', '1 3/16');
    type(bench, 'bendToShoulderMm', '0.5', 'in');
    bench.onParts.keep();
    const end = opened(bench).tables.ends.find(({ id }) => id === 'elbow');
    expect([end?.seatToBendMm, end?.bendToShoulderMm]).toEqual([30.1625, 12.7]);
    const card = bench.onParts.card();
    expect(card && fieldText(card, column('ends', 'seatToBendMm'), 'in')).toBe('1 3/16');
  });

  it('keeps nothing that is wrong, says it beside its field, and what is missing once Keep was pressed', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends');
    bench.onParts.startNew();
    type(bench, 'name', 'My elbow');
    type(bench, 'dash', '-8');
    const said = (key: string): string[] => {
      const card = bench.onParts.card();
      if (card === null) throw new Error('no card');
      const read = readDraft(card, opened(bench).tables.ends);
      return read.ok ? [] : fieldProblems(card, read.problems, key).map(({ message }) => message);
    };
    expect(said('dash')).toEqual(['write the dash size without its dash: 8']);
    expect(said('source')).toEqual([]);
    bench.onParts.keep();
    expect(said('source')).toEqual(['missing; expected text in quotes']);
    expect(opened(bench).tables.ends).toHaveLength(2);
    expect(hasUnsavedEdits(opened(bench))).toBe(false);
  });

  it('a new part gets an id of its name and stands in the own table', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'straight');
    bench.onParts.startCopy();
    type(bench, 'name', 'Straight');
    type(bench, 'source', 'caliper, on the bench');
    bench.onParts.keep();
    const ends = opened(bench).tables.ends;
    expect(ends.map(({ id }) => id)).toEqual(['straight', 'elbow', 'straight-2']);
    expect(ends[2]).toMatchObject({ provenance: 'own', source: 'caliper, on the bench', dash: 8 });
    expect(bench.drawer.getState().chosen.ends).toBe('straight-2');
  });

  it('loses nothing typed by looking elsewhere, and drops it when told', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    type(bench, 'name', 'Other name');
    bench.onParts.choose('straight');
    bench.onParts.shut();
    bench.onParts.open('ends', 'elbow');
    expect(bench.onParts.card()?.typed['name']?.text).toBe('Other name');
    bench.onParts.drop();
    expect(bench.onParts.card()?.typed).toEqual({});
    type(bench, 'name', 'Other');
    type(bench, 'name', 'Elbow');
    expect(bench.drawer.getState().drafts).toEqual({});
  });

  it('refuses to take out what a run uses and to keep what no longer fits one', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    bench.onParts.remove();
    expect(bench.drawer.getState().refused).toEqual(['elbow: in use by Feed; choose another part there first']);
    type(bench, 'dash', '6');
    bench.onParts.keep();
    expect(bench.drawer.getState().refused[0]).toContain('a -6 end does not go on a -8 hose');
    expect(opened(bench).tables.ends[1]?.dash).toBe(8);
  });

  it('takes out what nothing uses, and puts it back on undo', async () => {
    const { bench } = await laidBench();
    bench.onParts.open('ends', 'elbow');
    bench.onParts.startCopy();
    type(bench, 'source', 'mine');
    bench.onParts.keep();
    bench.onParts.remove();
    expect(opened(bench).tables.ends.map(({ id }) => id)).toEqual(['straight', 'elbow']);
    bench.document.undo();
    expect(opened(bench).tables.ends.map(({ id }) => id)).toEqual(['straight', 'elbow', 'elbow-copy']);
  });
});

describe('saving', () => {
  it('writes only tables that differ from the disk, new ones as new, and again only what changed since', async () => {
    const { bench, tables } = await laidBench();
    await bench.save();
    expect(tables.at(-1)).toEqual({ added: [], changed: [] });
    bench.onParts.open('ends', 'elbow');
    type(bench, 'name', 'Bent end');
    bench.onParts.keep();
    bench.onParts.open('sleeves');
    bench.onParts.startNew();
    for (const [key, text] of Object.entries({
      name: 'Sleeve',
      insideDiameterMm: '16',
      outsideDiameterMm: '22',
      maxTemperatureC: '260',
      weightKgPerM: '0.2',
      source: 'mine',
    }))
      type(bench, key, text);
    bench.onParts.keep();
    expect(opened(bench).history.present.tables.sleeves).toEqual(['own-sleeves.csv']);
    await bench.save();
    expect(tables.at(-1)?.added.map(({ path }) => path)).toEqual(['own-sleeves.csv']);
    expect(tables.at(-1)?.changed.map(({ path }) => path)).toEqual(['ends.csv']);
    expect(hasUnsavedEdits(opened(bench))).toBe(false);
    bench.document.undo();
    await bench.save();
    expect(tables.at(-1)).toEqual({ added: [], changed: [] });
    bench.document.undo();
    await bench.save();
    expect(tables.at(-1)?.changed.map(({ bytes }) => bytes)).toEqual([sampleFiles().files[2]?.bytes]);
    bench.document.redo();
    bench.document.redo();
    await bench.save();
    expect(tables.at(-1)?.added).toEqual([]);
    expect(tables.at(-1)?.changed.map(({ path }) => path)).toEqual(['ends.csv']);
  });
});

describe('a table brought in', () => {
  const rows = [sampleEnd({ id: 'new' }), sampleEnd({ id: 'elbow', bendAngleDeg: 45 })];
  const csv = (text: string): NamedFile[] => [{ path: 'theirs.csv', bytes: new TextEncoder().encode(text) }];

  async function withFile(text: string) {
    const sample = sampleBench(
      { openProject: SAMPLE_BAY },
      { chooseFiles: async () => ({ ok: true, value: csv(text) }) },
    );
    await sample.bench.openGiven();
    sample.bench.onParts.open('ends');
    await sample.bench.onParts.bringIn();
    return sample;
  }

  it('lies on top with what it would do; merged it changes and adds, in one step back', async () => {
    const { bench } = await withFile(partTableCsv('ends', rows));
    expect(bench.drawer.getState().incoming?.plan).toEqual({
      fresh: ['new'],
      changed: ['elbow'],
      same: [],
      others: ['straight'],
    });
    bench.onParts.takeIn('merge');
    expect(opened(bench).tables.ends.map(({ id, bendAngleDeg }) => [id, bendAngleDeg])).toEqual([
      ['straight', 0],
      ['elbow', 45],
      ['new', 0],
    ]);
    expect(bench.drawer.getState().incoming).toBeNull();
    bench.document.undo();
    expect(opened(bench).tables.ends.map(({ id }) => id)).toEqual(['straight', 'elbow']);
  });

  it('replaces only when no run loses its end, and says which would', async () => {
    const { bench } = await withFile(partTableCsv('ends', rows));
    bench.onParts.takeIn('replace');
    expect(bench.drawer.getState().incoming?.problems.map(({ path, message }) => `${path} ${message}`)).toEqual([
      'straight in use by Feed, Drain; choose another part there first',
    ]);
    expect(opened(bench).tables.ends.map(({ id }) => id)).toEqual(['straight', 'elbow']);
  });

  it('tells every problem of a bad file and changes nothing', async () => {
    const { bench } = await withFile(partTableCsv('ends', rows).replace('new', 'New!').replaceAll(',8,', ',x,'));
    const { incoming } = bench.drawer.getState();
    expect(incoming?.problems.map(({ path }) => path)).toEqual([
      'theirs.csv row 2, dash',
      'theirs.csv row 2, id',
      'theirs.csv row 3, dash',
    ]);
    expect(hasUnsavedEdits(opened(bench))).toBe(false);
  });

  it('is written out as it stands', async () => {
    const { bench, saved } = await withFile('');
    await bench.onParts.exportKind();
    expect(saved.map(({ name }) => name)).toEqual(['ends.csv']);
  });
});
