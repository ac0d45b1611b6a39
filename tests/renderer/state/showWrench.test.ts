import { expect, it } from 'vitest';
import { KEY_ACTIONS } from '../../../renderer/state/keys.ts';
import { showWrench } from '../../../renderer/state/showWrench.ts';
import { handsWith, nutWith } from '../../arbitraries/hands.ts';
import { SAMPLE_BAY, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

async function laidBench() {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.openGiven();
  const { b: _none, ...oneNut } = handsWith(nutWith(), nutWith());
  const lays = [sampleLay('feed', { hands: handsWith(nutWith(), nutWith({ middle: [7, 8, 9] })) })];
  bench.document.setState(({ open }) => ({
    open: open && { ...open, report: sampleReport([...lays, sampleLay('drain', { hands: oneNut })]) },
  }));
  bench.session.choose('feed');
  return bench;
}

it('draws the room at one nut, looks there, and puts it away with another hose', async () => {
  const bench = await laidBench();
  showWrench(bench, 'b');
  expect(bench.session.getState().wrench).toBe('b');
  expect(bench.session.getState().flight?.point).toEqual([7, 8, 9]);
  bench.session.choose('drain');
  expect(bench.session.getState().wrench).toBeNull();
  showWrench(bench, 'b');
  expect(bench.session.getState().wrench).toBeNull();
});

it('goes round from END A to END B to none by its key', async () => {
  const bench = await laidBench();
  const key = KEY_ACTIONS.find(({ shown }) => shown === 'Shift W');
  const seen = [1, 2, 3, 4].map(() => {
    key?.act(bench);
    return bench.session.getState().wrench;
  });
  expect(seen).toEqual(['a', 'b', null, 'a']);
});
