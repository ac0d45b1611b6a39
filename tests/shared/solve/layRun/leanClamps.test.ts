import { expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { curveAt, curveLengthMm } from '../../../../shared/geometry/cubicCurve.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { keptOfRun } from '../../../../shared/solve/layRun/contactOfRun.ts';
import { fieldOfRun } from '../../../../shared/solve/layRun/fieldOfRun.ts';
import { leanClamps } from '../../../../shared/solve/layRun/leanClamps.ts';
import { relaxRoute } from '../../../../shared/solve/layRun/relaxRoute.ts';
import { routeRun } from '../../../../shared/solve/layRun/routeRun.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { liveMmOf } from '../../../../shared/solve/layRun/tautLiveMm.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const FAR = { min: [-300, -600, 300], max: [-299, -599, 301] } as const;

const overFloor = (topMm: number) => over({ min: [-300, -600, topMm - 20], max: [900, 600, topMm] });
const overBar = (topMm: number) => over({ min: [295, -600, topMm - 20], max: [305, 600, topMm] });

/** A hose of 5 % slack between ports that face each other, over a block: what holds it, and how it lies then. */
function over(block: Parameters<typeof meshOfBlocks>[0][number]) {
  const port = (id: string, seatPoint: [number, number, number], axis: [number, number, number]) =>
    examplePort(id, { seatPoint, axis, up: [0, 0, 1] });
  const resolved = oneRunProject(
    [port('a', [0, 0, 0], [1, 0, 0]), port('b', [600, 0, 0], [-1, 0, 0])],
    [STRAIGHT, STRAIGHT],
    HOSE,
  );
  const bay = buildBayIndex(meshOfBlocks([block, FAR]), () => PLAIN_SKIN, UNWATCHED);
  const others = buildTubeField([]);
  const context = { project: resolved.project, bay };
  const setting = runSetting(resolved.project, resolved.runs[0]!);
  const field = fieldOfRun(context, setting, others);
  const route = routeRun(setting, field, setting.minRadiusMm, setting.tailMm, 1, 'quick', UNWATCHED).routes[0]!;
  const liveMm = 1.05 * liveMmOf(route);
  const hose = { route, liveMm, tautLiveMm: liveMmOf(route), freeClocks: false };
  const clamps = leanClamps(setting, hose, keptOfRun(context, setting, others, 1), UNWATCHED);
  const shape = relaxRoute(setting, route, liveMm, clamps ?? [], false, undefined, UNWATCHED);
  return { setting, clamps, shape };
}

it('is clamped in the middle where it hangs down on what it keeps clear of, as high as is asked', () => {
  const { setting, clamps, shape } = overBar(-80);
  expect(clamps).toHaveLength(1);
  const { atMm, ofMm, pose } = clamps![0]!.held!;
  // Ports that face each other: everything is alike about the middle.
  expect(atMm / ofMm).toBeCloseTo(0.5, 2);
  expect(pose.point[0]).toBeCloseTo(300, 0);
  expect(Math.abs(pose.direction[0])).toBeGreaterThan(0.9999);
  // 12 mm are asked of a plain skin, from the outside of a hose 16 mm thick.
  expect(pose.point[2]).toBeGreaterThan(-80 + 8 + 12);
  expect(pose.point[2]).toBeLessThan(-80 + 8 + 12 + 2);
  const lowest = (points: readonly Vec3[]): number => Math.min(...points.map((p) => p[2]));
  const along = Array.from({ length: 401 }, (_, i) => (curveLengthMm(shape!.curve) * i) / 400);
  expect(lowest(along.map((mm) => curveAt(shape!.curve, mm).point))).toBeGreaterThan(-80 + 8 + 12);
  expect(shape!.liveLengthMm).toBeCloseTo(curveLengthMm(shape!.curve) - 30, 6);
  expect(setting.outsideRadiusMm).toBe(8);
});

it('is held by nothing where it leans on nothing', () => {
  expect(overFloor(-250).clamps).toEqual([]);
});

it('is not clamped where it is bent too tightly even so', () => {
  // The hose has 25 mm to hang down in and bows by 70: over a floor this near it can only fold.
  expect(overFloor(-45).clamps).toBeUndefined();
});
