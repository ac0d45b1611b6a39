import { describe, expect, it } from 'vitest';
import { madeCounts, madeState, readReadings } from '../../../renderer/state/benchProgress.ts';
import { stepOpenings } from '../../../renderer/state/stepOpenings.ts';
import { stockPlan } from '../../../renderer/state/stockPlan.ts';
import type { AsBuilt } from '../../../shared/document/project/schema.ts';
import { SAMPLE_BAY, sampleBench, sampleFinding, sampleLay, sampleReport } from '../sampleBench.ts';

const PROOF = { on: '2026-11-20', pressureKpa: 9000 };

describe('how far a hose has come', () => {
  it('goes by what is written down of it; a failed test before all else', () => {
    expect(madeState(undefined)).toBe('to-make');
    expect(madeState({ roll: 'r' })).toBe('to-make');
    expect(madeState({ cutLengthMm: 450 })).toBe('made');
    expect(madeState({ crimpMm: { a: [21] } })).toBe('made');
    expect(madeState({ cutLengthMm: 450, proof: PROOF })).toBe('proved');
    expect(madeState({ proof: PROOF, fittedOn: '2026-11-21' })).toBe('fitted');
    expect(madeState({ proof: { ...PROOF, failed: true }, fittedOn: '2026-11-21' })).toBe('failed');
  });

  it('counts every hose once', () => {
    const runs = [{ asBuilt: { proof: PROOF } }, {}, {}] as never;
    expect(madeCounts({ runs })).toEqual({ 'to-make': 2, made: 0, failed: 0, proved: 1, fitted: 0 });
  });
});

describe('readings as they are typed', () => {
  it.each([
    ['21.02 21.05', [21.02, 21.05]],
    ['21,02; 21,05', [21.02, 21.05]],
    ['21.02, 21.05 / 21', [21.02, 21.05, 21]],
    ['', []],
    ['21.02 x', null],
    ['0 21', null],
    ['-21', null],
  ])('%j', (text, read) => expect(readReadings(text)).toEqual(read));
});

async function laid(clockDeg?: number) {
  const lays = [
    sampleLay('feed', {
      cutLengthMm: 450.12,
      ...(clockDeg === undefined ? {} : { clock: { kind: 'angle', deg: clockDeg, toleranceDeg: 3 } as const }),
    }),
    sampleLay('drain', { cutLengthMm: 300 }),
  ];
  const report = sampleReport(lays, [sampleFinding('drain', { severity: 'stop' })]);
  const made = sampleBench({
    openProject: SAMPLE_BAY,
    layRuns: { kind: 'done', output: report },
    builtHose: { kind: 'done', output: report },
  });
  await made.bench.openGiven();
  await made.bench.layAll();
  const built = (): AsBuilt | undefined => made.bench.document.getState().open?.history.present.runs[0]?.asBuilt;
  const open = () => {
    const { open: now } = made.bench.document.getState();
    if (now === null) throw new Error('nothing is open');
    return now;
  };
  return { ...made, built, open };
}

describe('writing down what the bench measured', () => {
  it('keeps what was there, one step back each, and takes one thing back alone', async () => {
    const { bench, built } = await laid();
    await bench.onBuilt.write('feed', { crimpMm: { a: [21.02, 21.05] } });
    await bench.onBuilt.write('feed', { proof: PROOF });
    expect(built()).toMatchObject({ crimpMm: { a: [21.02, 21.05] }, proof: PROOF });
    await bench.onBuilt.takeBack('feed', 'crimpMm');
    expect(built()).toEqual({ proof: PROOF });
    bench.document.undo();
    bench.document.undo();
    expect(built()).toEqual({ crimpMm: { a: [21.02, 21.05] } });
    await bench.onBuilt.takeBack('feed', 'crimpMm');
    expect(built()).toBeUndefined();
  });

  it('keeps the clock of a hose that was proof-tested: MIL-DTL-8790F 3.5.3', async () => {
    const { bench, built } = await laid(135);
    await bench.onBuilt.write('feed', { proof: PROOF });
    expect(built()?.proof?.clockDeg).toBe(135);
    await bench.onBuilt.write('feed', { clockDeg: 140 });
    expect(built()?.clockDeg).toBeUndefined();
    expect(bench.jobs.getState().notice?.lines[0]).toContain('not clocked again');
    await bench.onBuilt.takeBack('feed', 'proof');
    await bench.onBuilt.write('feed', { clockDeg: 140 });
    expect(built()?.clockDeg).toBe(140);
  });

  it('is told on the step', async () => {
    const { bench, open } = await laid();
    expect(stepOpenings(null).bench.words).toBe('waits for a bay');
    expect(stepOpenings({ ...open(), report: null }).bench).toEqual({ state: 'waits', words: 'wait for a lay' });
    expect(stepOpenings(open()).bench).toEqual({ state: 'open', words: 'none made yet' });
    await bench.onBuilt.write('feed', { fittedOn: '2026-11-21' });
    expect(stepOpenings(open()).bench.words).toBe('1 of 2 fitted');
    await bench.onBuilt.write('drain', { proof: { ...PROOF, failed: true } });
    expect(stepOpenings(open()).bench.words).toBe('1 failed its test');
  });
});

describe('the stock plan in the window', () => {
  const roll = (id: string, lengthMm: number) => ({
    id,
    hose: 'braided',
    lengthMm,
    provenance: 'example',
    source: 's',
  });

  it('cuts what may be cut, up to the next tenth, and leaves out what may not', async () => {
    const { open } = await laid();
    const tables = { ...open().tables, rolls: [roll('r1', 1000)] as never };
    const plan = stockPlan({ ...open(), tables });
    expect(plan.hoses.map(({ hose }) => hose)).toEqual(['braided']);
    const [piece] = plan.hoses[0]?.plan.pieces ?? [];
    expect(piece?.cuts).toEqual([{ run: 'feed', lengthMm: 450.2 }]);
    // 1000 less the hose less one kerf of 3.
    expect(piece?.leftMm).toBeCloseTo(546.8, 6);
    expect(plan.leftOut).toEqual(['drain']);
  });

  it('says what no roll holds, and sets nothing aside for a hose that is cut', async () => {
    const { bench, open } = await laid();
    const tables = { ...open().tables, rolls: [roll('r1', 400)] as never };
    expect(stockPlan({ ...open(), tables }).hoses[0]?.plan.notHeld.map(({ run }) => run)).toEqual(['feed']);
    await bench.onBuilt.write('feed', { cutLengthMm: 450 });
    const plan = stockPlan(open());
    expect(plan.cut).toEqual(['feed']);
    expect(plan.hoses).toEqual([]);
  });
});
