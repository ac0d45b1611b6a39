import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField, type Tube } from '../../../../shared/solve/bay/tubeField.ts';
import { fieldOfRun } from '../../../../shared/solve/layRun/fieldOfRun.ts';
import { measureClearances, tightestClearance } from '../../../../shared/solve/layRun/measureClearances.ts';
import { relaxRoute } from '../../../../shared/solve/layRun/relaxRoute.ts';
import { routeRun } from '../../../../shared/solve/layRun/routeRun.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { liveMmOf } from '../../../../shared/solve/layRun/tautLiveMm.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const PROOF_MM = 0.1;

/** A hose 600 mm from port to port, and things strewn about it, some of them through it or at its ports. */
function strewn(seed: number) {
  const random = seededRandom(seed);
  const between = (from: number, to: number): number => from + (to - from) * random();
  const port = (id: string, seatPoint: [number, number, number], axis: [number, number, number]) =>
    examplePort(id, { seatPoint, axis, up: [0, 0, 1] });
  const { project, runs } = oneRunProject(
    [port('a', [0, 0, 0], [1, 0, 0]), port('b', [600, 0, 0], [-1, 0, 0])],
    [STRAIGHT, STRAIGHT],
    HOSE,
  );
  const clear = buildBayIndex(
    meshOfBlocks([{ min: [-900, -900, -900], max: [-899, -899, -899] }]),
    () => PLAIN_SKIN,
    UNWATCHED,
  );
  const setting = runSetting(project, runs[0]!);
  const field = fieldOfRun({ project, bay: clear }, setting, buildTubeField([]));
  const route = routeRun(setting, field, setting.minRadiusMm, setting.tailMm, 1, 'quick', UNWATCHED).routes[0]!;
  const shape = relaxRoute(setting, route, 1.05 * liveMmOf(route), [], false, undefined, UNWATCHED)!;
  const blocks = Array.from({ length: 4 }, () => {
    const at: Vec3 = [between(-50, 650), between(-120, 120), between(-180, 120)];
    return { min: at, max: [at[0] + 30, at[1] + 30, at[2] + 30] as Vec3 };
  });
  const tubes = Array.from({ length: 5 }, (_, i): Tube => {
    const at: Vec3 = [between(-50, 650), between(-150, 150), between(-200, 150)];
    return { run: `other-${i}`, points: [at, [at[0] + 20, at[1] + between(-80, 80), at[2] + 60]], radiusMm: 8 };
  });
  const bay = buildBayIndex(meshOfBlocks(blocks), () => PLAIN_SKIN, UNWATCHED);
  return { project, setting, shape, bay, others: buildTubeField(tubes) };
}

it('the tightest clearance is the tightest of all that are measured', () => {
  let breaches = 0;
  for (let seed = 1; seed <= 30; seed++) {
    const { project, setting, shape, bay, others } = strewn(seed);
    const all = measureClearances(project, setting, shape, bay, others, PROOF_MM);
    const tightest = tightestClearance(project, setting, shape, bay, others, PROOF_MM)!;
    const overMm = (c: typeof tightest): number => c.clearanceMm - c.requiredMm;
    expect(Math.abs(overMm(tightest) - Math.min(...all.map(overMm)))).toBeLessThan(PROOF_MM);
    if (overMm(tightest) < 0) breaches++;
  }
  expect(breaches).toBeGreaterThan(3);
  expect(breaches).toBeLessThan(30);
});
