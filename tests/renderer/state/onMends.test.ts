import { describe, expect, it } from 'vitest';
import { isStale, layOf } from '../../../renderer/state/runState.ts';
import type { Mends } from '../../../shared/document/mends/schema.ts';
import { SAMPLE_BAY, sampleBench, sampleFinding, sampleLay, sampleReport } from '../sampleBench.ts';

const FINDING = sampleFinding('feed', { severity: 'stop' });
const BEFORE = sampleReport([sampleLay('feed'), sampleLay('drain')], [FINDING]);
const MENDED = sampleLay('feed', { cutLengthMm: 112 });
const MENDS: Mends = {
  format: 'hosewright-mends',
  version: 1,
  run: 'feed',
  inputHash: 'x',
  aimedAt: [FINDING],
  tried: 4,
  answers: [
    {
      mend: {
        id: 'm',
        run: 'feed',
        edit: { kind: 'end', side: 'b', end: 'straight' },
        words: 'A straight end at END B',
      },
      words: 'A straight end at END B cures: bend radius (cut 112 mm, 12 mm longer).',
      how: 'anew',
      lay: MENDED,
      towards: [],
      findings: [],
      cured: [{ finding: FINDING, words: 'cures: bend radius' }],
      left: [],
      stopsLeft: 0,
      looksLeft: 0,
      newNotes: [],
      change: 4,
      longerMm: 12,
      toGet: [],
    },
  ],
};

async function tried() {
  const { bench, asked } = sampleBench({
    openProject: SAMPLE_BAY,
    layRuns: { kind: 'done', output: BEFORE },
    tryMends: { kind: 'done', output: MENDS },
    checkLays: { kind: 'done', output: sampleReport([MENDED, sampleLay('drain')]) },
  });
  await bench.openGiven();
  await bench.layAll();
  await bench.onMends.look('feed', FINDING);
  const open = () => bench.document.getState().open!;
  return { bench, asked, open };
}

describe('what would mend a run, in the window', () => {
  it('is tried for the check of one finding, or for all of a run', async () => {
    const { bench, asked } = await tried();
    expect(asked.at(-1)?.input).toMatchObject({ run: 'feed', checks: ['bendRadius'] });
    expect(bench.onMends.getState().found).toMatchObject({ of: FINDING, mends: { run: 'feed' } });
    await bench.onMends.look('feed');
    expect(asked.at(-1)?.input).not.toHaveProperty('checks');
    expect(bench.onMends.getState().found?.of).toBeUndefined();
  });

  it('is made in one step, with the lay that it was tried with, and taken back with its hose', async () => {
    const { bench, asked, open } = await tried();
    await bench.onMends.make(0);
    expect(open().history.present.runs[0]?.b.end).toBe('straight');
    expect(layOf(open(), 'feed')?.cutLengthMm).toBe(112);
    expect(isStale(open(), 'feed')).toBe(false);
    expect(isStale(open(), 'drain')).toBe(false);
    expect(open().report?.findings).toEqual([]);
    expect(asked.map(({ name }) => name)).not.toContain('relayRun');
    expect(bench.onMends.getState()).toMatchObject({ found: null, shown: null });
    bench.document.undo();
    expect(open().history.present.runs[0]?.b.end).toBe('elbow');
    expect(layOf(open(), 'feed')?.cutLengthMm).toBe(100);
    expect(open().report?.findings).toEqual([FINDING]);
  });

  it('is not made in another project than it was tried on', async () => {
    const { bench, open } = await tried();
    bench.document.edit('name', (project) => ({ ...project, name: 'Other' }));
    await bench.onMends.make(0);
    expect(open().history.present.runs[0]?.b.end).toBe('elbow');
    expect(bench.jobs.getState().notice?.title).toContain('has changed');
  });

  it('leaves the bench as it is when it is cancelled', async () => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: BEFORE } });
    await bench.openGiven();
    await bench.onMends.look('feed');
    expect(bench.onMends.getState().found).toBeNull();
    await bench.layAll();
    await bench.onMends.look('feed');
    expect(bench.onMends.getState().found).toBeNull();
    expect(bench.jobs.getState().notice?.title).toContain('stopped');
  });
});
