import { describe, expect, it, vi } from 'vitest';
import { hasUnsavedEdits, type OpenDocument } from '../../../renderer/state/documentStore.ts';
import { setEnd, setEnds, setOwnClock, setSlack, setSleeve } from '../../../renderer/state/edits/runEdits.ts';
import { orderFindings } from '../../../renderer/state/findingOrder.ts';
import { runState } from '../../../renderer/state/runState.ts';
import { SAFE_WORDS } from '../../../renderer/state/safeWords.ts';
import { stepOpenings } from '../../../renderer/state/stepOpenings.ts';
import { PAPERS } from '../../../shared/document/paper/paperNames.ts';
import type { JobEnd } from '../../../shared/jobs/contract.ts';
import {
  SAMPLE_BAY,
  SAMPLE_PROJECT,
  sampleBench,
  sampleFiles,
  sampleFinding,
  sampleLay,
  sampleReport,
} from '../sampleBench.ts';

type SampleBench = ReturnType<typeof sampleBench>['bench'];

function opened(bench: SampleBench): OpenDocument {
  const { open } = bench.document.getState();
  if (open === null) throw new Error(`nothing is open: ${JSON.stringify(bench.jobs.getState().notice)}`);
  return open;
}

const BOTH = sampleReport([sampleLay('feed'), sampleLay('drain')]);

describe('bench', () => {
  it('opens the given project, reads its tables and asks for the bay', async () => {
    const { bench, asked } = sampleBench({ openProject: SAMPLE_BAY });
    expect(stepOpenings(null).bay.words).toBe('bring in a bay');
    await bench.openGiven();
    const open = opened(bench);
    expect(asked.map((a) => a.name)).toEqual(['openProject']);
    expect(open.bay?.parts.map((p) => p.name)).toEqual(['plate']);
    expect(open.tables.ends.map((e) => e.id)).toEqual(['straight', 'elbow']);
    expect(bench.session.getState().run).toBe('feed');
    expect(runState(open, 'feed')).toBe('not-laid');
    expect(stepOpenings(open).runs).toEqual({ state: 'open', words: '2 to lay' });
    expect(stepOpenings(open).papers.state).toBe('waits');
  });

  it('tells every problem of bad input and keeps what was on the bench', async () => {
    const problems = [
      { path: 'runs[0]', message: 'no way in' },
      { path: 'runs[1]', message: 'no way out', got: '7' },
    ];
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'bad-input', problems } });
    await bench.openGiven();
    await bench.layAll();
    expect(bench.jobs.getState().notice?.lines).toEqual([
      'runs[0]: no way in',
      'runs[1]: no way out, got 7',
      SAFE_WORDS.unchanged,
    ]);
    expect(opened(bench).report).toBeNull();
  });

  it('does not take what cannot be read, nor anything while work is under way; a reading that was stopped is asked for again', async () => {
    let taken = 0;
    let reading: JobEnd<'openProject'> = { kind: 'cancelled' };
    const unreadable = { ...sampleFiles(), projectText: '{}' };
    const { bench, asked } = sampleBench(
      {
        get openProject() {
          return reading;
        },
        layRuns: new Promise<never>(() => undefined),
      },
      { taken: async () => void taken++, chooseProject: async () => ({ ok: true, value: unreadable }) },
    );
    await bench.openGiven();
    expect([taken, opened(bench).bay]).toEqual([1, null]);
    await bench.openChosen();
    expect(bench.jobs.getState().notice?.title).toBe('The project has problems');
    expect([taken, opened(bench).history.present.name]).toEqual([1, 'Sample']);
    reading = SAMPLE_BAY;
    await bench.readBay();
    expect(opened(bench).bay?.parts.map(({ name }) => name)).toEqual(['plate']);

    void bench.layAll();
    const before = asked.length;
    await bench.openGiven();
    expect(bench.jobs.getState().notice?.title).toBe('Something is being worked on');
    expect([taken, asked.length]).toEqual([1, before]);
  });

  it('keeps the fresh lay of another run when an edit is undone, and brings back the hose of the one that was edited', async () => {
    const laidFeed = (cutLengthMm: number) => sampleLay('feed', { cutLengthMm });
    const { bench, ends, asked } = sampleBench({
      openProject: SAMPLE_BAY,
      layRuns: {
        kind: 'done',
        output: sampleReport([laidFeed(100)], [sampleFinding('feed', { message: 'as it was' })]),
      },
    });
    await bench.openGiven();
    await bench.layRun('feed');
    bench.document.edit('slack', (project) => setSlack(project, 'feed', 0.2));
    ends.layRuns = { kind: 'done', output: sampleReport([laidFeed(104)]) };
    await bench.layRun('feed');
    const drainAlso = sampleReport([laidFeed(104), sampleLay('drain')], [sampleFinding('drain')]);
    ends.layRuns = { kind: 'done', output: drainAlso };
    await bench.layRun('drain');
    const stands = () => [
      ...['feed', 'drain'].map((run) => runState(opened(bench), run)),
      opened(bench).report?.lays.map(({ cutLengthMm }) => cutLengthMm),
      opened(bench).report?.findings.map(({ run }) => run),
    ];
    expect(stands()).toEqual(['clean', 'look', [104, 100], ['drain']]);
    bench.document.undo();
    expect(stands()).toEqual(['look', 'look', [100, 100], ['feed', 'drain']]);
    bench.document.redo();
    expect(stands()).toEqual(['clean', 'look', [104, 100], ['drain']]);

    // They were laid among other hoses, so each is measured against the other, and none is laid for it.
    bench.document.undo();
    const measured = sampleReport([laidFeed(100), sampleLay('drain')], [sampleFinding('drain', { severity: 'stop' })]);
    ends.layRuns = { kind: 'done', output: measured };
    await vi.waitFor(() => expect(stands()).toEqual(['clean', 'stop', [100, 100], ['drain']]));
    const asks = asked.filter(({ name }) => name === 'layRuns');
    expect(asks).toHaveLength(4);
    expect(asks.at(-1)?.input).toMatchObject({ runs: [], earlier: { lays: [{ cutLengthMm: 100 }, { run: 'drain' }] } });
  });

  it('shows a run as not laid in a state in which it never was, with another run laid since', async () => {
    const { bench, ends } = sampleBench({
      openProject: SAMPLE_BAY,
      layRuns: { kind: 'done', output: sampleReport([sampleLay('feed')]) },
    });
    await bench.openGiven();
    const states = () => ['feed', 'drain'].map((run) => runState(opened(bench), run));
    bench.document.edit('slack', (project) => setSlack(project, 'feed', 0.2));
    await bench.layRun('feed');
    bench.document.undo();
    expect(states()).toEqual(['not-laid', 'not-laid']);
    bench.document.redo();
    ends.layRuns = { kind: 'done', output: BOTH };
    await bench.layRun('drain');
    bench.document.undo();
    expect(states()).toEqual(['not-laid', 'clean']);
  });

  it('marks a run stale when what its lay hangs on is changed, and fresh again when that is undone', async () => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: BOTH } });
    await bench.openGiven();
    await bench.layAll();
    expect(runState(opened(bench), 'feed')).toBe('clean');
    bench.document.edit('slack', (project) => setSlack(project, 'feed', 0.08));
    expect(['feed', 'drain'].map((id) => runState(opened(bench), id))).toEqual(['stale', 'clean']);
    expect(hasUnsavedEdits(opened(bench))).toBe(true);
    bench.document.undo();
    expect(runState(opened(bench), 'feed')).toBe('clean');
    bench.document.redo();
    await bench.layRun('feed');
    expect(runState(opened(bench), 'feed')).toBe('clean');
  });

  it('marks every run stale when it is another vehicle, whose rules and joints to reach are others', async () => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: BOTH } });
    await bench.openGiven();
    await bench.layAll();
    bench.document.edit('vehicle', (project) => ({ ...project, vehicle: 'boat' }));
    expect(['feed', 'drain'].map((id) => runState(opened(bench), id))).toEqual(['stale', 'stale']);
    bench.document.undo();
    expect(runState(opened(bench), 'feed')).toBe('clean');
  });

  it('does not call a run stale for a new name, and keeps the other run stale when one is laid', async () => {
    const { bench, asked } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: BOTH } });
    await bench.openGiven();
    await bench.layAll();
    bench.document.edit('name', (p) => ({ ...p, runs: p.runs.map((run) => ({ ...run, name: `${run.name} line` })) }));
    expect(runState(opened(bench), 'drain')).toBe('clean');
    for (const id of ['feed', 'drain']) bench.document.edit('slack', (p) => setSlack(p, id, 0.07));
    await bench.layRun('feed');
    expect(['feed', 'drain'].map((id) => runState(opened(bench), id))).toEqual(['clean', 'stale']);
    const last = asked.at(-1)?.input as { runs: string[]; earlier: unknown; projectText: string };
    expect(last.runs).toEqual(['feed']);
    expect(last.earlier).toEqual(BOTH);
    expect(JSON.parse(last.projectText).runs[0].slack).toBe(0.07);
  });

  it('says stop for a near miss without findings, and for a finding that forbids cutting', async () => {
    const report = sampleReport(
      [sampleLay('feed', { outcome: 'near-miss' }), sampleLay('drain')],
      [sampleFinding('drain', { severity: 'stop' }), sampleFinding('drain')],
    );
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: report } });
    await bench.openGiven();
    await bench.layAll();
    expect(['feed', 'drain'].map((id) => runState(opened(bench), id))).toEqual(['stop', 'stop']);
    const openings = stepOpenings(opened(bench));
    expect(openings.runs.words).toBe('1 without a good way');
    expect(openings.checks.words).toBe('1 to put right');
    expect(openings.papers).toEqual({ state: 'open', words: '2 not fit to cut' });
  });

  it('asks for the papers that are wanted, hands one over by its own name, and says so when there is nothing to put on it', async () => {
    const files = [{ path: 'papers/build-sheets.pdf', bytes: new Uint8Array(3) }];
    const { bench, saved, asked } = sampleBench({
      openProject: SAMPLE_BAY,
      layRuns: { kind: 'done', output: BOTH },
      makeSheets: { kind: 'done', output: { files } },
    });
    await bench.openGiven();
    await bench.papers(PAPERS);
    expect(saved).toEqual([]);
    await bench.layAll();
    await bench.papers(['build-sheets.pdf']);
    expect(saved).toEqual([{ name: 'build-sheets.pdf', bytes: 3 }]);
    expect(asked.at(-1)).toMatchObject({ name: 'makeSheets', input: { papers: ['build-sheets.pdf'] } });
    files.length = 0;
    await bench.papers(['stock-cuts.csv']);
    expect(bench.jobs.getState().notice?.title).toBe('No such paper');
  });

  it('flies to a finding and marks its place', async () => {
    const at = { arcLengthMm: 40, point: [40, 0, 0] as [number, number, number] };
    const report = sampleReport([sampleLay('feed'), sampleLay('drain')], [sampleFinding('drain', { at })]);
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: report } });
    await bench.openGiven();
    await bench.layAll();
    const [first] = orderFindings(report.findings);
    if (first === undefined) throw new Error('no finding');
    bench.goToFinding(first);
    expect(bench.session.getState()).toMatchObject({ run: 'drain', finding: 1, flight: { point: at.point } });
    expect(bench.hover.getState().place).toEqual({ run: 'drain', arcLengthMm: 40, from: 'finding' });
    // One without a place leaves no mark of the one before.
    bench.goToFinding({ number: 2, finding: sampleFinding('drain') });
    expect(bench.hover.getState().place).toBeNull();
  });
});

describe('findings in order', () => {
  it('puts what forbids cutting first, then the furthest over its limit, and numbers them from 1', () => {
    const order = orderFindings([
      sampleFinding('feed', { message: 'note', severity: 'note', margin: -50 }),
      sampleFinding('feed', { message: 'look', severity: 'look' }),
      sampleFinding('feed', { message: 'a bit', severity: 'stop', limit: 100, margin: -1 }),
      sampleFinding('feed', { message: 'a lot', severity: 'stop', limit: 10, margin: -1 }),
    ]);
    expect(order.map((n) => [n.number, n.finding.message])).toEqual([
      [1, 'a lot'],
      [2, 'a bit'],
      [3, 'look'],
      [4, 'note'],
    ]);
  });
});

describe('edits of a run', () => {
  it('keeps slack in its range and leaves the project alone when nothing changes', () => {
    expect(setSlack(SAMPLE_PROJECT, 'feed', 2).runs[0]?.slack).toBe(0.5);
    expect(setSlack(SAMPLE_PROJECT, 'feed', -1).runs[0]?.slack).toBe(0);
    expect(setSlack(SAMPLE_PROJECT, 'feed', 0.05)).toBe(SAMPLE_PROJECT);
    expect(setSleeve(SAMPLE_PROJECT, 'feed', undefined)).toBe(SAMPLE_PROJECT);
  });

  it('frees the own clock when another end is chosen, and only then', () => {
    const fixed = setOwnClock(SAMPLE_PROJECT, 'feed', 'b', 90);
    expect(fixed.runs[0]?.b.clockDeg).toBe(90);
    expect(setEnd(fixed, 'feed', 'b', 'elbow')).toBe(fixed);
    expect(setEnds(fixed, 'feed', { a: fixed.runs[0]!.a.end, b: 'elbow' })).toBe(fixed);
    expect(setEnds(fixed, 'feed', { a: 'straight', b: 'straight' }).runs[0]).toMatchObject({
      a: { end: 'straight' },
      b: { end: 'straight' },
    });
    expect(setEnd(fixed, 'feed', 'b', 'straight').runs[0]?.b).toEqual({ port: 'p2', end: 'straight' });
    expect(setOwnClock(fixed, 'feed', 'b', undefined)).toEqual(SAMPLE_PROJECT);
  });
});
