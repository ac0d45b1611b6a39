import { expect, it } from 'vitest';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { StackedAdapter } from '../../../../shared/document/project/fitAdapters.ts';
import { type ResolvedProject, seatedPort, squarePort } from '../../../../shared/document/project/resolve.ts';
import type { Port } from '../../../../shared/document/project/schema.ts';
import { openHandLay } from '../../../../shared/solve/handLay/handLay.ts';
import { tubesOf } from '../../../../shared/solve/layRun/tubesOf.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();
const HOSE = exampleHose({ minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 18, bendToShoulderMm: 12, shoulderToMouthMm: 20 });
const TEE = exampleAdapter({ id: 'tee', form: 'tee', portToBendMm: 24, bendToSeatMm: 24, branchToSeatMm: 26 });

const tee = (outlet: 'straight' | 'branch'): StackedAdapter => ({ adapter: TEE, use: { adapter: 'tee', outlet } });

/** Two runs that leave one tee: straight on along +z, and along +x. */
function onOneTee(): ResolvedProject {
  const seat: Partial<Port> = { seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] };
  const far = (id: string, at: [number, number, number], axis: [number, number, number]) =>
    examplePort(id, { seatPoint: at, axis, up: [0, 1, 0] });
  const first = oneRunProject(
    [examplePort('on', seat), far('up', [60, 40, 520], [0, 0, -1])],
    [STRAIGHT, STRAIGHT],
    HOSE,
    { id: 'first' },
  );
  const second = oneRunProject(
    [examplePort('aside', seat), far('out', [520, 60, 70], [-1, 0, 0])],
    [STRAIGHT, STRAIGHT],
    HOSE,
    { id: 'second' },
  );
  const outlets = ['straight', 'branch'] as const;
  const runs = [...first.runs, ...second.runs].map((run, i) => ({
    ...run,
    a: { ...run.a, ...seatedPort(squarePort(run.a.port), [tee(outlets[i]!)]) },
  }));
  const { project } = first;
  return {
    project: {
      ...project,
      ports: [...project.ports, ...second.project.ports],
      runs: [...project.runs, ...second.project.runs],
    },
    runs,
  };
}

it('lays both hoses of a tee clean: the tee that they share is no obstacle to either', async () => {
  const resolved = onOneTee();
  const lays = await layRuns({ project: resolved.project, bay: BAY }, resolved, resolved.runs, [], UNWATCHED);
  expect(lays.map((l) => [l.run, l.outcome])).toEqual([
    ['first', 'laid'],
    ['second', 'laid'],
  ]);
  expect(lays.map((l) => l.ends.a.seatPoint.map(Math.round))).toEqual([
    [0, 0, 48],
    [26, 0, 24],
  ]);
  expect(lays[0]?.ends.a.adapters?.[0]?.branch?.[1]).toEqual(lays[1]?.ends.a.seatPoint);
});

it('takes the adapters along when their port is moved by hand', async () => {
  const resolved = onOneTee();
  const lays = await layRuns({ project: resolved.project, bay: BAY }, resolved, resolved.runs, [], UNWATCHED);
  const run = resolved.runs[1]!;
  const others = tubesOf(resolved, new Map(lays.map((l) => [l.run, l])), 'second');
  const hand = openHandLay({ project: resolved.project, bay: BAY }, run, lays[1]!, others, UNWATCHED);
  const port = { ...run.a.stack!.bare, seatPoint: [0, 30, 10] as [number, number, number] };
  const shape = hand?.move({ ports: [port] }, UNWATCHED);
  expect(distance(shape?.ends.a.seatPoint ?? [0, 0, 0], [26, 30, 34])).toBeLessThan(1e-9);
  expect(shape?.ends.a.adapters?.[0]?.points[0]).toEqual([0, 30, 10]);
});

it('holds a swivel with a range at its limit while the hose is in the hand', async () => {
  const lay = async (turning: Partial<typeof STRAIGHT>) => {
    const end = exampleEnd(90, { shoulderToMouthMm: 15, ...turning });
    const a = examplePort('a', { axis: [0, 0, 1], up: [1, 0, 0] });
    const b = examplePort('b', { seatPoint: [420, 160, 40], axis: [-1, 0, 0], up: [0, 0, 1] });
    const resolved = oneRunProject([a, b], [end, STRAIGHT], HOSE);
    const context = { project: resolved.project, bay: BAY };
    const [laid] = await layRuns(context, resolved, resolved.runs, [], UNWATCHED);
    return {
      laid: laid!,
      resolved,
      hand: openHandLay(context, resolved.runs[0]!, laid!, tubesOf(resolved, new Map(), 'run'), UNWATCHED)!,
    };
  };
  const pulled = ({ laid, hand }: Awaited<ReturnType<typeof lay>>) => {
    const middle = Math.floor(laid.centreline.points.length / 2);
    const [x, y, z] = laid.centreline.points[middle]!;
    const arcLengthMm = laid.centreline.arcLengthMm[middle]!;
    return hand.move({ pull: { arcLengthMm, to: [x, y - 90, z] } }, UNWATCHED).ends.a.ownClockDeg;
  };
  const free = await lay({});
  const at = free.laid.ends.a.ownClockDeg;
  const turnedTo = pulled(free);
  // Pulled aside the free swivel turns by more than two degrees; one with two degrees of room stops there.
  const apart = (clock: number) => ((clock - at + 540) % 360) - 180;
  expect(Math.abs(apart(turnedTo))).toBeGreaterThan(2);
  const stopped = pulled(await lay({ turning: 'range', turnFromDeg: at - 2, turnToDeg: at + 2 }));
  expect(Math.abs(apart(stopped))).toBeCloseTo(2, 6);
});
