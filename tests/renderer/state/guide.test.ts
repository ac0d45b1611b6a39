import { expect, it } from 'vitest';
import { GUIDE_STEPS } from '../../../renderer/state/guide.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

it('the guide goes on by itself when what it asks is done, and not before', async () => {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.firstLay();
  expect(bench.guide.getState().at).toBe(0);
  bench.guide.setState({ at: 1 });
  bench.session.choose('feed');
  expect(bench.guide.getState().at).toBe(1);
  bench.session.choose('cooler-feed');
  expect(bench.guide.getState().at).toBe(2);
  const straight = GUIDE_STEPS.findIndex(({ title }) => title.includes('straight'));
  bench.guide.setState({ at: straight });
  bench.hover.setState({ place: { run: 'feed', arcLengthMm: 10, from: 'bay' } });
  expect(bench.guide.getState().at).toBe(straight);
  bench.hover.setState({ place: { run: 'feed', arcLengthMm: 10, from: 'straight-view' } });
  expect(bench.guide.getState().at).toBe(straight + 1);
  bench.session.goTo('checks');
  expect(bench.guide.getState().at).toBe(straight + 2);
});

it('ends where it is left', async () => {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.firstLay();
  bench.guide.setState({ at: null });
  bench.session.choose('cooler-feed');
  expect(bench.guide.getState().at).toBeNull();
});
