import { expect, test } from 'vitest';
import type { Aim } from '../../../renderer/state/handStore.ts';
import { onAxis } from '../../../renderer/state/onRod.ts';
import { good } from '../../../shared/base/result.ts';
import type { Straightened } from '../../../shared/document/straightened/schema.ts';
import type { BentRodInput } from '../../../shared/jobs/contract.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

const at = (x: number): Aim => ({ point: [x, 0, 10], normal: [0, 0, 1], part: 'rod' });
const STRAIGHTENED: Straightened = {
  pathLengthMm: 514.16,
  cutLengthMm: 420.16,
  cutOffMm: { a: 47, b: 47 },
  lengthErrorMm: 0.4,
  clock: { kind: 'free', reason: 'a-straight' },
  tightest: { radiusMm: 100, arcLengthMm: 130 },
  scatterMm: 0.2,
  points: 3,
  notes: [],
};

test('points picked on the surface are brought to the axis, straightened, and taken as the hose as built', async () => {
  const { bench, asked } = sampleBench({
    openProject: SAMPLE_BAY,
    straightenRod: { kind: 'done', output: STRAIGHTENED },
  });
  await bench.openGiven();
  bench.onRod.begin();
  expect(bench.hand.getState().tool).toEqual({ kind: 'rod' });
  for (const x of [0, 50, 999, 100]) bench.onRod.pick(at(x));
  bench.onRod.takeBack();
  bench.onRod.pick(at(90));
  expect(bench.onRod.getState().picks.map((pick) => onAxis(pick, 4)[2])).toEqual([8, 8, 8, 8]);

  bench.onRod.set({ reach: 'seats' });
  await bench.onRod.straighten();
  const input = asked.at(-1)?.input as BentRodInput;
  // END A of the feed is straight, so it has no outlet; END B is an elbow, whose outlet points into its port (+Z out).
  expect(input.outletA).toBeUndefined();
  expect(input.outletB?.[2]).toBe(-1);
  // C of the square elbow is its 20 mm along the hose.
  expect(input.cutOffMm?.b).toBeCloseTo(20, 9);
  bench.onRod.takeAsBuilt();
  const built = () => bench.document.getState().open?.history.present.runs[0]?.asBuilt;
  expect(built()).toEqual({ cutLengthMm: 420.2, note: 'from a bent rod, 4 points' });
  bench.document.undo();
  expect(built()).toBeUndefined();

  bench.onRod.pick(at(120));
  expect(bench.onRod.getState().straightened).toBeNull();
  bench.session.choose('drain');
  expect(bench.onRod.getState()).toMatchObject({ run: null, picks: [] });
});

test('points from a file stand for the axis itself, and what is wrong in it is said', async () => {
  const chosen = ['0,0,0\n10,0,0\n20,1,0', '0,0'];
  const chooseFiles = async () => good([{ path: 'rod.csv', bytes: new TextEncoder().encode(chosen.shift() ?? '') }]);
  const { bench } = sampleBench({ openProject: SAMPLE_BAY }, { chooseFiles });
  await bench.openGiven();
  await bench.onRod.read();
  expect(bench.onRod.getState().picks.map((pick) => onAxis(pick, 4))).toEqual([
    [0, 0, 0],
    [10, 0, 0],
    [20, 1, 0],
  ]);
  await bench.onRod.read();
  expect(bench.jobs.getState().notice?.title).toBe('rod.csv is no row of points');
});
