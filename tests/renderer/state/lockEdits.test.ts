import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { lockOf, movedLock, slidStretch, stretchOf } from '../../../renderer/state/edits/lockEdits.ts';
import { placeAt } from '../../../renderer/state/layPlaces.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Lock, Run } from '../../../shared/document/project/schema.ts';
import { leastRadius } from '../../../shared/geometry/curveLimits.ts';
import { lockedStretch } from '../../../shared/solve/layRun/lockedStretch.ts';
import { SAMPLE_BAY, SAMPLE_PROJECT, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

const RADIUS_MM = 140;

/** A round of 140 mm, as a report gives it: a point every 4 mm, rounded to a thousandth. */
function roundHose(): Lay {
  const arcLengthMm = Array.from({ length: 101 }, (_, i) => i * 4);
  const points = arcLengthMm.map((mm): [number, number, number] => [
    Math.round(RADIUS_MM * Math.sin(mm / RADIUS_MM) * 1000) / 1000,
    Math.round(RADIUS_MM * (1 - Math.cos(mm / RADIUS_MM)) * 1000) / 1000,
    0,
  ]);
  return sampleLay('feed', { centreline: { points, arcLengthMm }, cutLengthMm: 400 });
}

const ROUND = roundHose();
const RUN = SAMPLE_PROJECT.runs[0] as Run;

function locked(fromMm: number, toMm: number): Lock {
  const made = lockOf(ROUND, RUN, { fromMm, toMm });
  if (!made.ok) throw new Error('refused');
  return made.value;
}

describe('a stretch that is locked', () => {
  it('lies on the bend between two points of the hose, not on its chord', () => {
    for (const mm of [101, 102, 103.4, 199.9]) {
      const place = placeAt(ROUND.centreline, mm);
      const [x, y] = place?.point ?? [0, 0];
      expect(Math.abs(Math.hypot(x, y - RADIUS_MM) - RADIUS_MM)).toBeLessThan(1.5e-3);
      expect(Math.abs((place?.along[0] ?? 0) - Math.cos(mm / RADIUS_MM))).toBeLessThan(2e-4);
    }
  });

  it('is bent no tighter than the hose was, wherever between two points it begins and ends', () => {
    for (const at of [0, 0.4, 1.2, 2, 2.6, 3.7]) {
      const { curve } = lockedStretch(locked(100 + at, 260 + at));
      expect(leastRadius(curve, 0.001).found).toBeGreaterThan(RADIUS_MM * 0.95);
    }
  });
});

describe('a locked stretch pulled along the hose', () => {
  const held = { fromMm: 100, toMm: 180 };

  it('grows and shrinks by an end, no further than it may', () => {
    expect(slidStretch(ROUND, held, 'from', -30)).toEqual({ fromMm: 70, toMm: 180 });
    expect(slidStretch(ROUND, held, 'from', 200)).toEqual({ fromMm: 170, toMm: 180 });
    expect(slidStretch(ROUND, held, 'to', -200)).toEqual({ fromMm: 100, toMm: 110 });
    expect(slidStretch(ROUND, held, 'to', 1e4).toMm).toBeLessThan(400);
  });

  it('keeps its length when it moves whole, also where it comes to a collar', () => {
    for (const by of [-1e4, -12, 0, 33, 1e4]) {
      const { fromMm, toMm } = slidStretch(ROUND, held, 'whole', by);
      expect(toMm - fromMm).toBeCloseTo(80, 9);
      expect(fromMm).toBeGreaterThan(0);
      expect(toMm).toBeLessThan(400);
    }
  });

  it('may lie where it lay, not where another does', () => {
    const two: Run = { ...RUN, locks: [locked(60, 120), { ...locked(200, 260), id: 'lock-2' }] };
    const moved = movedLock(ROUND, two, 'lock-1', { fromMm: 80, toMm: 150 });
    expect(moved.ok && moved.value.id).toBe('lock-1');
    expect(moved.ok && stretchOf(ROUND, moved.value).toMm).toBeCloseTo(150, 1);
    expect(movedLock(ROUND, two, 'lock-1', { fromMm: 80, toMm: 210 }).ok).toBe(false);
  });
});

describe('letting go of a locked stretch', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('is one step back, and a stretch that may not be leaves all as it was', async () => {
    const { bench } = sampleBench({
      openProject: SAMPLE_BAY,
      layRuns: { kind: 'done', output: sampleReport([ROUND, sampleLay('drain')]) },
      relayRun: { kind: 'done', output: sampleReport([ROUND, sampleLay('drain')]) },
    });
    await bench.openGiven();
    await bench.layAll();
    const locks = () => bench.document.getState().open?.history.present.runs[0]?.locks ?? [];
    bench.byHand.lock({ fromMm: 100, toMm: 180 });
    bench.hand.set({ slidLock: { lock: 'lock-1', to: { fromMm: 120, toMm: 200 } } });
    bench.byHand.relock('lock-1', { fromMm: 120, toMm: 200 });
    expect(bench.hand.getState().slidLock).toBeNull();
    expect(stretchOf(ROUND, locks()[0] as Lock).fromMm).toBeCloseTo(120, 1);
    bench.byHand.relock('lock-1', { fromMm: 120, toMm: 121 });
    expect(bench.jobs.getState().notice?.lines[0]).toContain('10 mm or longer');
    expect(stretchOf(ROUND, locks()[0] as Lock).fromMm).toBeCloseTo(120, 1);
    bench.document.undo();
    expect(stretchOf(ROUND, locks()[0] as Lock).fromMm).toBeCloseTo(100, 1);
  });
});
