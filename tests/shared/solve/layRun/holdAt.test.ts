import { expect, it } from 'vitest';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Breath } from '../../../../shared/document/lay/schema.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { curveAt, curveLengthMm } from '../../../../shared/geometry/cubicCurve.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { breathe } from '../../../../shared/solve/layRun/breathe.ts';
import { breatheWell } from '../../../../shared/solve/layRun/breatheWell.ts';
import { leastApartMm } from '../../../../shared/solve/layRun/clampOnRoute.ts';
import { contactOfRun } from '../../../../shared/solve/layRun/contactOfRun.ts';
import { fieldOfRun } from '../../../../shared/solve/layRun/fieldOfRun.ts';
import { holdAt } from '../../../../shared/solve/layRun/holdAt.ts';
import { bestOfRoute } from '../../../../shared/solve/layRun/letLie.ts';
import { relaxRoute } from '../../../../shared/solve/layRun/relaxRoute.ts';
import { routeRun } from '../../../../shared/solve/layRun/routeRun.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { liveMmOf } from '../../../../shared/solve/layRun/tautLiveMm.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const FAR = { min: [-300, -600, 300], max: [-299, -599, 301] } as const;

type Port = readonly [seat: [number, number, number], axis: [number, number, number]];
type Block = Parameters<typeof meshOfBlocks>[0][number];

/** A hose of 5 % slack between two ports beside a block. */
function rig([a, b]: readonly [Port, Port], block: Block) {
  const port = (id: string, [seatPoint, axis]: Port) => examplePort(id, { seatPoint, axis, up: [0, 0, 1] });
  const { project, runs } = oneRunProject([port('a', a), port('b', b)], [STRAIGHT, STRAIGHT], HOSE);
  const bay = buildBayIndex(meshOfBlocks([block, FAR]), () => PLAIN_SKIN, UNWATCHED);
  const others = buildTubeField([]);
  const context = { project, bay };
  const setting = runSetting(project, runs[0]!);
  const field = fieldOfRun(context, setting, others);
  const contact = contactOfRun(bay, others, setting);
  const route = routeRun(setting, field, setting.minRadiusMm, setting.tailMm, 1, 'quick', UNWATCHED).routes[0]!;
  const surroundings = { field, contact, tautLiveOf: liveMmOf, mayTouch: true };
  const candidate = bestOfRoute(setting, route, [], [0], surroundings, UNWATCHED)!;
  const atRest = breathe(project, setting, candidate, contact, bay, others, UNWATCHED);
  const well = () => breatheWell(context, setting, candidate, others, UNWATCHED);
  return { setting, candidate, atRest, well };
}

const FACING: readonly [Port, Port] = [
  [
    [0, 0, 0],
    [1, 0, 0],
  ],
  [
    [600, 0, 0],
    [-1, 0, 0],
  ],
];
const overBar = (topMm: number) => rig(FACING, { min: [295, -600, topMm - 20], max: [305, 600, topMm] });

/** Side by side, so that the hose goes out to a wall and comes back. */
const SIDE_BY_SIDE: readonly [Port, Port] = [
  [
    [0, -100, 0],
    [1, 0, 0],
  ],
  [
    [0, 100, 0],
    [1, 0, 0],
  ],
];
const beforeWall = (xMm: number) => rig(SIDE_BY_SIDE, { min: [xMm, -400, -200], max: [xMm + 20, 400, 200] });

/** How much more room than is asked the hose has at its worst under pressure, mm. */
const leastOverMm = (breathing: readonly Breath[]): number =>
  Math.min(
    ...breathing.map(({ tightest }) =>
      tightest === undefined ? -Infinity : tightest.clearanceMm - tightest.requiredMm,
    ),
  );

const LOW = -300;

it('holds a hose as it lies: with the clamp it lies as without', () => {
  const { setting, candidate } = overBar(LOW);
  const { shape, route, liveMm } = candidate;
  const clamps = holdAt(setting, candidate, 200)!;
  expect(clamps).toHaveLength(1);
  const held = relaxRoute(setting, route, liveMm, clamps, false, undefined, UNWATCHED)!;
  expect(held.holdsAtMm[0]).toBeCloseTo(200, 3);
  for (let mm = 0; mm <= curveLengthMm(shape.curve); mm += 10)
    expect(distance(curveAt(held.curve, mm).point, curveAt(shape.curve, mm).point)).toBeLessThan(0.1);
  const twice = holdAt(setting, { ...candidate, shape: held, clamps }, 400)!;
  const heldTwice = relaxRoute(setting, route, liveMm, twice, false, undefined, UNWATCHED)!;
  expect(heldTwice.holdsAtMm.map((mm) => Math.round(mm))).toEqual([200, 400]);
  for (let mm = 0; mm <= curveLengthMm(shape.curve); mm += 10)
    expect(distance(curveAt(heldTwice.curve, mm).point, curveAt(shape.curve, mm).point)).toBeLessThan(0.1);
});

it('keeps away from what holds it already, and is none where there is no room for it', () => {
  const { setting, candidate } = overBar(LOW);
  const apartMm = leastApartMm(setting);
  const fromMm = setting.a.end.shoulderToMouthMm + candidate.shape.tailMm.a;
  const clamps = holdAt(setting, candidate, fromMm + 5)!;
  expect(clamps[0]!.held!.atMm).toBeCloseTo(apartMm, 6);
  const held = relaxRoute(setting, candidate.route, candidate.liveMm, clamps, false, undefined, UNWATCHED)!;
  expect(holdAt(setting, { ...candidate, shape: held, clamps }, fromMm)).toBeUndefined();
  expect(holdAt(setting, candidate, fromMm - 2 * apartMm)).toBeUndefined();
});

it('a hose that comes too near to a wall under pressure is held there, and has its slack over the shortest way through that', () => {
  const { candidate: free } = beforeWall(2000);
  const along = Array.from({ length: 401 }, (_, i) => (curveLengthMm(free.shape.curve) * i) / 400);
  const furthestMm = Math.max(...along.map((mm) => curveAt(free.shape.curve, mm).point[0]));
  // 12 mm are asked of a plain skin, from the outside of a hose 16 mm thick; it has 1 mm more at rest.
  const { candidate, atRest, well } = beforeWall(furthestMm + 8 + 12 + 1);
  expect(candidate.judgement.fault).toBe(0);
  expect(leastOverMm(atRest)).toBeLessThan(-2);
  const held = well();
  expect(leastOverMm(held.breathing)).toBeGreaterThanOrEqual(0);
  const { holds, liveLengthMm } = held.candidate.shape;
  expect(holds.map(({ proposed }) => proposed)).toEqual([true]);
  // Ports alike about the plane between them: it is held in the middle.
  expect(holds[0]!.pose.point[1]).toBeCloseTo(0, 0);
  // From end to end the way through the clamp is not shorter than the way without it.
  expect(held.candidate.tautLiveMm).toBeGreaterThanOrEqual(candidate.tautLiveMm);
  expect(liveLengthMm / held.candidate.tautLiveMm).toBeGreaterThan(1.05 - 1e-6);
});

it('a hose is not held in the bow that it needs when pressure shortens it', () => {
  const { candidate } = overBar(LOW);
  const along = Array.from({ length: 401 }, (_, i) => (curveLengthMm(candidate.shape.curve) * i) / 400);
  const lowestMm = Math.min(...along.map((mm) => curveAt(candidate.shape.curve, mm).point[2]));
  const near = overBar(lowestMm - 8 - 12 - 5);
  expect(leastOverMm(near.atRest)).toBeLessThan(-5);
  const told = near.well();
  expect(told.candidate.clamps).toHaveLength(0);
  expect(told.breathing.every(({ taut }) => !taut)).toBe(true);
});
