import { describe, expect, it } from 'vitest';
import { distance, dot, sub, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { motionsAt } from '../../../../shared/document/lay/motionsAt.ts';
import { curveAt, curveLengthMm } from '../../../../shared/geometry/cubicCurve.ts';
import { movePoint, turnDirection } from '../../../../shared/geometry/rigidMotion.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { heldPlaces } from '../../../../shared/solve/layRun/runSetting.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { bodyBays, movingBodies, nearestBody } from '../../../../shared/solve/rock/bodyBays.ts';
import { heldHose } from '../../../../shared/solve/rock/heldHose.ts';
import { letGoAtRest } from '../../../../shared/solve/rock/letGo.ts';
import { measuredExtreme } from '../../../../shared/solve/rock/measuredExtreme.ts';
import { rockedHose } from '../../../../shared/solve/rock/rockedHose.ts';
import { rockPoses } from '../../../../shared/solve/rock/rockPoses.ts';
import { ENGINE_BLOCKS, rockingBlocks } from '../../../arbitraries/rockingBlocks.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';

/** The whole bay with the engine's corners moved, the slow way. */
function movedMesh(mesh: TriMesh, moved: (p: Vec3) => Vec3): TriMesh {
  const positions = mesh.positions.slice();
  for (const part of mesh.parts) {
    if (!ENGINE_BLOCKS.includes(part.name)) continue;
    const used = new Set(mesh.indices.subarray(3 * part.firstTriangle, 3 * (part.firstTriangle + part.triangleCount)));
    for (const i of used)
      positions.set(moved([positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!]), 3 * i);
  }
  return { ...mesh, positions };
}

describe.each([3, 8, 21, 34])('hoses between rocking blocks, seed %i', async (seed) => {
  const { mesh, bay, project: resolved } = rockingBlocks(seed);
  const { project } = resolved;
  const lays = await layRuns({ project, bay }, resolved, resolved.runs, [], UNWATCHED);
  const bays = bodyBays(project, mesh, UNWATCHED);
  const poses = rockPoses(project);
  const bodies = { moving: movingBodies(poses), nearest: (p: Vec3) => nearestBody(bays, p) };

  it.each(lays.map((lay, i) => [lay.run, lay, resolved.runs[i]!] as const))(
    '%s keeps length, ends and what is said of it',
    (_, lay, run) => {
      const held = heldHose(project, run, lay, bodies);
      if (held === undefined) return;
      const hose = letGoAtRest(held, bays, UNWATCHED);
      let seen = 0;
      for (const pose of poses) {
        const rocked = rockedHose(hose, project, bays, pose, UNWATCHED);
        const { curve } = rocked;
        if (curve === undefined) continue;
        seen++;
        const engine = motionsAt(project, pose, 1)('engine');
        const around = { project, bays, others: buildTubeField([]) };
        const told = measuredExtreme(hose, rocked, pose, around);

        // It is the same hose: as long, leaving both ends along their axes where those stand.
        expect(curveLengthMm(curve)).toBeCloseTo(lay.cutLengthMm, 2);
        const [start, end] = [curveAt(curve, 0), curveAt(curve, curveLengthMm(curve))];
        expect(distance(start.point, lay.ends.a.shoulderPoint)).toBeLessThan(1e-6);
        expect(distance(end.point, movePoint(engine, lay.ends.b.shoulderPoint))).toBeLessThan(1e-6);
        expect(dot(end.tangent, turnDirection(engine, lay.ends.b.hoseAxis))).toBeCloseTo(-1, 9);

        // No place of it is nearer to the moved bay than is told, outside the zones of its ports; and it is that near there.
        const bayThen = movedMesh(mesh, (p) => movePoint(engine, p));
        const radius = hose.setting.outsideRadiusMm;
        const tightest = told.tightest!;
        expect(bruteForceDistance(bayThen, tightest.at.point) - radius).toBeCloseTo(tightest.clearanceMm, 3);
        const zoneMm = 2 * (radius + tightest.requiredMm) + 1;
        const { a, b } = hose.setting;
        const toMm = curveLengthMm(curve) - b.end.shoulderToMouthMm;
        for (let s = a.end.shoulderToMouthMm; s <= toMm; s += 5) {
          const { point } = curveAt(curve, s);
          if (heldPlaces(rocked.setting).some((h) => distance(h, point) < zoneMm)) continue;
          expect(bruteForceDistance(bayThen, point) - radius).toBeGreaterThan(tightest.provenAtLeastMm - 1e-3);
        }

        // Nor bent tighter than is told: circles through three places.
        for (let s = 10; s + 10 <= curveLengthMm(curve); s += 4) {
          const [p, q, r] = [s - 4, s, s + 4].map((at) => curveAt(curve, at).point) as [Vec3, Vec3, Vec3];
          const turn = Math.acos(Math.min(1, dot(unit(sub(q, p)), unit(sub(r, q)))));
          if (turn > 1e-4) expect(4 / turn).toBeGreaterThan(told.minRadius!.provenAtLeastMm * 0.985);
        }
      }
      expect(seen).toBeGreaterThan(poses.length / 2);
    },
  );
});
