import { expect, it } from 'vitest';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

it.each([
  ['seat', { kind: 'seat', port: null }, 'type its place'],
  ['measure', { kind: 'measure' }, 'picture alone'],
] as const)(
  'puts a tool down that looks for a place (%s) where there is no picture, and says what to do',
  async (_, tool, words) => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY });
    await bench.openGiven();
    bench.hand.take(tool);
    expect(bench.hand.getState().tool).toEqual(tool);
    bench.session.set({ picture: 'no-webgl' });
    bench.hand.take(tool);
    expect(bench.hand.getState().tool.kind).toBe('none');
    expect(bench.jobs.getState().notice?.lines[0]).toContain(words);
  },
);

it('leaves tools in the hand that lists and the straight view serve too', async () => {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.openGiven();
  bench.session.set({ picture: 'no-webgl' });
  for (const tool of [
    { kind: 'put', support: 'clamp' },
    { kind: 'skin', skin: null },
  ] as const) {
    bench.hand.take(tool);
    expect(bench.hand.getState().tool).toEqual(tool);
  }
  expect(bench.jobs.getState().notice).toBeNull();
});
