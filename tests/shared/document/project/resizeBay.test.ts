import { describe, expect, it } from 'vitest';
import { angleBetween, distance, UP, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { levelBay, rescaleBay } from '../../../../shared/document/project/resizeBay.ts';
import type { Project } from '../../../../shared/document/project/schema.ts';
import { levelled } from '../../../../shared/geometry/meshImport/squareUp.ts';
import { samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';

const seat: Vec3 = [300, -120, 80];
const project: Project = sampleProject({
  ports: [samplePort({ seatPoint: [...seat], axis: [1, 0, 0] }), samplePort({ id: 'p2', name: 'Port 2' })],
  runs: [sampleRun({ supports: [{ id: 's', kind: 'clamp', point: [10, 20, 30], axis: [0, 1, 0] }] })],
});

/** Where a place of the meshes lies in the bay of a project. */
const inBay = ({ bay }: Project, [x, y, z]: Vec3): Vec3 => {
  const s = bay.scale ?? 1;
  return levelled([x * s, y * s, z * s], bay.level);
};

describe('a bay that is scaled and levelled', () => {
  it('takes its ports along: each stays on the place of the mesh that it was put on, whatever comes after what', () => {
    const scaled = rescaleBay(project, 300 / 299.5);
    const tilted = levelBay(scaled, unit([0.1, -0.05, 1]));
    const again = levelBay(tilted, unit([-0.02, 0.2, 1]));
    const last = rescaleBay(again, 1.01);
    for (const stage of [scaled, tilted, again, last]) {
      expect(distance(stage.ports[0]!.seatPoint, inBay(stage, seat))).toBeLessThan(1e-9);
      expect(distance(stage.runs[0]!.supports[0]!.point, inBay(stage, [10, 20, 30]))).toBeLessThan(1e-9);
    }
    expect(last.bay.scale).toBeCloseTo((300 / 299.5) * 1.01, 12);
  });

  it('has the face that was picked for level square to the plumb line', () => {
    const once = levelBay(project, unit([0.3, 0.1, 1]));
    // what looked along (0.3, 0.1, 1) in the bay before looks straight up in it now
    expect(angleBetween(levelled([0.3, 0.1, 1], once.bay.level), UP)).toBeLessThan(1e-7);
    expect(angleBetween(once.ports[0]!.axis, levelled([1, 0, 0], once.bay.level))).toBeLessThan(1e-9);
  });

  it('leaves the sizes of parts and the wanted figures alone', () => {
    const scaled = rescaleBay(project, 2);
    expect(scaled.runs[0]!.slack).toBe(project.runs[0]!.slack);
    expect(scaled.bay.scanUncertaintyMm).toBe(project.bay.scanUncertaintyMm);
    expect(scaled.ports[0]!.axis).toEqual([1, 0, 0]);
  });
});
