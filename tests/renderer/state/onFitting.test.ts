import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FITTING_STEP_MS, fittingSequence } from '../../../renderer/state/onFitting.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { SAMPLE_BAY, SAMPLE_PROJECT, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

/** The drain is tightened before the feed, which stands after it in the project. */
const DRAIN_FIRST = { before: ['feed'], places: [] } as unknown as NonNullable<Lay['hands']>;
const LAYS = [sampleLay('feed'), sampleLay('drain', { hands: DRAIN_FIRST })];

async function fittingBench(lays: readonly Lay[] = LAYS) {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns: { kind: 'done', output: sampleReport(lays) } });
  await bench.openGiven();
  await bench.layAll();
  return bench;
}

describe('the order in which hoses go on', () => {
  it('is the order of fitting, without hoses that have no shape', () => {
    expect(fittingSequence(null)).toEqual([]);
    expect(fittingSequence(sampleReport(LAYS))).toEqual(['drain', 'feed']);
    const noWay = sampleLay('drain', { outcome: 'no-way', centreline: { points: [], arcLengthMm: [] } });
    expect(fittingSequence(sampleReport([sampleLay('feed'), noWay]))).toEqual(['feed']);
  });
});

describe('putting them on', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('goes hose by hose, each chosen as it goes on, and stops at both ends', async () => {
    const bench = await fittingBench();
    bench.onFitting.step(1);
    expect(bench.onFitting.getState().on).toBe(1);
    expect(bench.session.getState().run).toBe('drain');
    bench.onFitting.step(1);
    bench.onFitting.step(1);
    expect(bench.onFitting.getState().on).toBe(2);
    expect(bench.session.getState().run).toBe('feed');
    bench.onFitting.to(0);
    bench.onFitting.step(-1);
    expect(bench.onFitting.getState().on).toBe(0);
    bench.onFitting.leave();
    expect(bench.onFitting.getState()).toEqual({ on: null, plays: false });
  });

  it('plays by itself from an empty bay, pauses where it is, and ends when all are on', async () => {
    const bench = await fittingBench();
    bench.onFitting.play();
    expect(bench.onFitting.getState()).toEqual({ on: 0, plays: true });
    await vi.advanceTimersByTimeAsync(FITTING_STEP_MS / 2);
    expect(bench.onFitting.getState().on).toBe(1);
    bench.onFitting.pause();
    await vi.advanceTimersByTimeAsync(FITTING_STEP_MS * 5);
    expect(bench.onFitting.getState()).toEqual({ on: 1, plays: false });
    bench.onFitting.play();
    await vi.advanceTimersByTimeAsync(FITTING_STEP_MS * 5);
    expect(bench.onFitting.getState()).toEqual({ on: 2, plays: false });
  });

  it('shows all again once a hose is laid anew, and does nothing where none is laid', async () => {
    const bench = await fittingBench();
    bench.onFitting.step(1);
    bench.document.reported(sampleReport(LAYS), SAMPLE_PROJECT);
    expect(bench.onFitting.getState().on).toBeNull();
    const { bench: bare } = sampleBench({ openProject: SAMPLE_BAY });
    await bare.openGiven();
    bare.onFitting.play();
    bare.onFitting.step(1);
    expect(bare.onFitting.getState()).toEqual({ on: null, plays: false });
  });
});
