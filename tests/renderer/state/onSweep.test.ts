import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createOnSweep } from '../../../renderer/state/onSweep.ts';
import type { Skin } from '../../../shared/document/project/schema.ts';
import type { JobEnd, JobInput } from '../../../shared/jobs/contract.ts';
import type { JobHost } from '../../../shared/jobs/hostJobs.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const REST_MS = 160;
const ROD: Skin = {
  id: 'rod',
  name: 'Rod',
  kind: 'moving',
  parts: ['plate'],
  sweep: { kind: 'stroke', direction: [0, 0, 1], fromMm: 0, toMm: 40 },
};

interface Asked {
  readonly input: JobInput<'sweepParts'>;
  tell(fraction: number): void;
  end(end: JobEnd<'sweepParts'>): void;
  cancelled: boolean;
}

/** An open bay with a moving plate, and a host that ends its work when the test says so. */
async function moving() {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.openGiven();
  const state = (skin: Skin): void =>
    bench.document.edit('skin', (project) => ({ ...project, bay: { ...project.bay, skins: [skin] } }));
  state(ROD);
  const asked: Asked[] = [];
  const jobs = {
    start: (
      _name: string,
      input: JobInput<'sweepParts'>,
      onProgress: (p: { fraction: number; doing: string }) => void,
    ) => {
      let end: Asked['end'] = () => undefined;
      const ended = new Promise<JobEnd<'sweepParts'>>((resolve) => {
        end = resolve;
      });
      const one: Asked = {
        input,
        tell: (fraction) => onProgress({ fraction, doing: 'sweeping' }),
        end,
        cancelled: false,
      };
      asked.push(one);
      return { end: ended, cancel: () => (one.cancelled = true) };
    },
  } as unknown as Pick<JobHost, 'start'>;
  const onSweep = createOnSweep({ document: bench.document, session: bench.session, jobs });
  return { bench, state, asked, onSweep };
}

const done = (...corners: number[]): JobEnd<'sweepParts'> => ({
  kind: 'done',
  output: { corners: new Float32Array(corners) },
});

it('works out what a moving skin sweeps while its values are open, of its own parts alone, and shows nothing after', async () => {
  const { bench, asked, onSweep } = await moving();
  bench.session.set({ step: 'bay', skin: 'rod' });
  await vi.advanceTimersByTimeAsync(REST_MS);
  expect(asked).toHaveLength(1);
  expect(asked[0]?.input.sweep).toEqual(ROD.sweep);
  expect([...(asked[0]?.input.mesh.positions ?? [])]).toEqual([0, 0, 0, 10, 0, 0, 0, 10, 0]);
  asked[0]?.tell(0.4);
  expect(onSweep.getState().fraction).toBe(0.4);
  asked[0]?.end(done(1, 2, 3));
  await vi.advanceTimersByTimeAsync(0);
  expect(onSweep.getState()).toEqual({ corners: new Float32Array([1, 2, 3]), fraction: null });
  bench.session.set({ step: 'runs' });
  expect(onSweep.getState()).toEqual({ corners: null, fraction: null });
});

it('stops what is under way when the movement changes, keeps what is drawn until the new is there, and takes no late answer', async () => {
  const { bench, state, asked, onSweep } = await moving();
  bench.session.set({ step: 'bay', skin: 'rod' });
  await vi.advanceTimersByTimeAsync(REST_MS);
  asked[0]?.end(done(1));
  await vi.advanceTimersByTimeAsync(0);
  for (const toMm of [50, 60]) {
    state({ ...ROD, sweep: { kind: 'stroke', direction: [0, 0, 1], fromMm: 0, toMm } });
    await vi.advanceTimersByTimeAsync(REST_MS);
  }
  expect(asked.map(({ cancelled }) => cancelled)).toEqual([false, true, false]);
  asked[1]?.end(done(2));
  await vi.advanceTimersByTimeAsync(0);
  expect([...(onSweep.getState().corners ?? [])]).toEqual([1]);
  asked[2]?.end(done(3));
  await vi.advanceTimersByTimeAsync(0);
  expect([...(onSweep.getState().corners ?? [])]).toEqual([3]);
});

it('can be stopped by hand, and asks for nothing where it is not said how the skin moves', async () => {
  const { bench, state, asked, onSweep } = await moving();
  bench.session.set({ step: 'bay', skin: 'rod' });
  await vi.advanceTimersByTimeAsync(REST_MS);
  onSweep.stop();
  expect([asked[0]?.cancelled, onSweep.getState().fraction]).toEqual([true, null]);
  const { sweep: _, ...still } = ROD;
  state(still);
  await vi.advanceTimersByTimeAsync(REST_MS);
  expect(asked).toHaveLength(1);
});
