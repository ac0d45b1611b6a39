import { bench, describe } from 'vitest';
import { addScaled, anySquareTo, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { HandChange } from '../../shared/document/hand/handChange.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { type HandLay, openHandLay } from '../../shared/solve/handLay/handLay.ts';
import { relayNear } from '../../shared/solve/handLay/relayNear.ts';
import { tubesOf } from '../../shared/solve/layRun/tubesOf.ts';
import { layRuns } from '../../shared/solve/layRuns/layRuns.ts';
import { buildExampleIndex, resolved } from './exampleBay.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/**
 * One move of a drag in the example bay, all measures told: warm rod, exact clearance, least radius, clock. The other
 * hoses of the group stand in the bay. What opening a hand and laying a run again on letting go take stands beside it.
 */
const bay = buildExampleIndex();
const context = { project: resolved.project, bay };

/** Short and long, in line and bent, with two angled ends, past other hoses. */
const RUNS = ['cooler-feed', 'oil-suction', 'cooler-return', 'coolant-out', 'tank-breather'];
const chosen = resolved.runs.filter((r) => RUNS.includes(r.run.id));
const lays = await layRuns(context, resolved, chosen, [], UNWATCHED);
const laid = new Map(lays.map((lay) => [lay.run, lay]));

function take(id: string): { hand: HandLay; lay: Lay } {
  const lay = laid.get(id) as Lay;
  const run = resolved.runs.find((r) => r.run.id === id)!;
  const hand = openHandLay(context, run, lay, tubesOf(resolved, laid, id), UNWATCHED);
  if (hand === undefined) throw new Error(`handLay.bench: ${id} cannot be taken`);
  return { hand, lay };
}

/** To and fro, 2 mm a move over 20 mm, as a pointer drags. */
function* toAndFro(): Generator<number> {
  for (;;) {
    for (let d = 0; d < 20; d += 2) yield d;
    for (let d = 20; d > 0; d -= 2) yield d;
  }
}

function pointDrag(id: string): () => void {
  const { hand, lay } = take(id);
  const { points, arcLengthMm } = lay.centreline;
  const i = Math.floor(points.length * 0.45);
  const side = anySquareTo(unit(addScaled(points[i + 1] as Vec3, points[i - 1] as Vec3, -1)));
  const places = toAndFro();
  return () => {
    const to = addScaled(points[i] as Vec3, side, places.next().value as number);
    keep(hand.move({ pull: { arcLengthMm: arcLengthMm[i] as number, to } }, UNWATCHED).cutLengthMm);
  };
}

function portDrag(id: string): () => void {
  const { hand } = take(id);
  const { port } = resolved.runs.find((r) => r.run.id === id)!.b;
  const side = anySquareTo(port.axis);
  const places = toAndFro();
  return () => {
    const [x, y, z] = addScaled(port.seatPoint, side, places.next().value as number);
    const change: HandChange = { ports: [{ ...port, seatPoint: [x, y, z] }] };
    keep(hand.move(change, UNWATCHED).cutLengthMm);
  };
}

describe('re-lay by hand in the example bay', () => {
  bench(REFERENCE, () => keep(reference()));
  for (const id of RUNS) {
    bench(`a point dragged: ${id}`, pointDrag(id));
    bench(`a port dragged: ${id}`, portDrag(id));
  }
  bench('a run taken in the hand', () => keep(take('cooler-return').lay.cutLengthMm));
  const run = resolved.runs.find((r) => r.run.id === 'cooler-return')!;
  const line = (laid.get('cooler-return') as Lay).centreline.points;
  bench(
    'a run laid again near where it lies',
    () => keep(relayNear(context, resolved, run, lays, line, UNWATCHED).length),
    {
      iterations: 5,
      time: 0,
      warmupIterations: 1,
      warmupTime: 0,
    },
  );
});
