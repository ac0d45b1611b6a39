import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addScaled, angleBetween, anySquareTo, distance, unit } from '../../../shared/base/vec3.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { fitRim } from '../../../shared/geometry/fitRim.ts';
import { openMesh } from '../../../shared/geometry/meshImport/openMesh.ts';
import { placeMesh } from '../../../shared/geometry/meshImport/placeMesh.ts';

const FOLDER = new URL('../../../models/bays/hillclimb/', import.meta.url);

async function meshOf(path: string, bytes: Uint8Array) {
  const opened = await openMesh(path, bytes);
  if (!opened.ok) throw new Error(`${path} does not read`);
  return opened.value.mesh;
}

describe('fitRim on whole bays', () => {
  // The example bay's unions are built round their ports, so the project's own seats are the known answers.
  it('finds the seat and axis of every port of the example bay from a click beside it', async () => {
    const project = parseProject(readFileSync(new URL('project.json', FOLDER), 'utf8'));
    if (!project.ok) throw new Error('the example bay does not read');
    const [file] = project.value.bay.meshes;
    if (file === undefined) throw new Error('the example bay has no mesh');
    const bytes = new Uint8Array(readFileSync(new URL(file.path, FOLDER)));
    const mesh = placeMesh(await meshOf(file.path, bytes), file.unit, file.upAxis);
    for (const port of project.value.ports) {
      const axis = unit(port.axis);
      const rim = fitRim(mesh, addScaled(port.seatPoint, anySquareTo(axis), 4), axis);
      if (rim === undefined) throw new Error(`${port.id}: no rim`);
      expect(distance(rim.centre, port.seatPoint), port.id).toBeLessThan(0.05);
      expect((angleBetween(rim.axis, axis) * 180) / Math.PI, port.id).toBeLessThan(0.1);
    }
  }, 60_000);
});
