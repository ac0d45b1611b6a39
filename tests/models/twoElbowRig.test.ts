import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { projectText } from '../../models/bays/hillclimb/make/project.ts';
import { MESH_FILE, twoElbowProject } from '../../models/bays/two-elbow-rig/make/project.ts';
import { twoElbowRig } from '../../models/bays/two-elbow-rig/make/rig.ts';
import { join } from '../../models/shapes/solid.ts';
import { straight } from '../../models/shapes/sweep.ts';
import { writeGlb } from '../../models/shapes/writeGlb.ts';
import { distance, dot, length, sub, type Vec3 } from '../../shared/base/vec3.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';
import { buildBvh, nearestDistance } from '../../shared/geometry/bvh.ts';

const FOLDER = new URL('../../models/bays/two-elbow-rig/', import.meta.url);
const parts = twoElbowRig();
const glb = await writeGlb('two-elbow-rig', parts);
const project = twoElbowProject(glb);
const HOSE_RADIUS_MM = 15.7 / 2;

// WRITE_MODELS=1 writes what the makers make; without it the files on disk are only compared.
if (process.env['WRITE_MODELS'] === '1') {
  writeFileSync(new URL(MESH_FILE, FOLDER), glb);
  writeFileSync(new URL('project.json', FOLDER), projectText(project));
}

/** The axis of the known answer, a point every half degree of bend, and its length in closed form. */
function knownAxis(): Vec3[] {
  const points: Vec3[] = [[0, 0, 0]];
  for (let k = 0; k <= 180; k++) {
    const a = ((k / 2) * Math.PI) / 180;
    points.push([50 + 100 * Math.sin(a), 100 - 100 * Math.cos(a), 0]);
  }
  for (let k = 0; k <= 180; k++) {
    const a = ((k / 2) * Math.PI) / 180;
    points.push([150, 200 + 100 * Math.sin(a), 100 - 100 * Math.cos(a)]);
  }
  points.push([150, 300, 150]);
  return points;
}

test('the rig is made again with the same bytes as the files', () => {
  expect(Buffer.compare(Buffer.from(glb), readFileSync(new URL(MESH_FILE, FOLDER)))).toBe(0);
  expect(readFileSync(new URL('project.json', FOLDER), 'utf8')).toBe(projectText(project));
});

test('the project reads without a problem', () => {
  const read = parseProject(projectText(project));
  expect(read.ok ? [] : read.problems).toEqual([]);
});

test('the known axis is 50 + 50 pi + 100 + 50 pi + 50 long and passes every clamp along its direction', () => {
  const axis = knownAxis();
  const walked = axis.slice(1).reduce((sum, p, i) => sum + distance(p, axis[i] as Vec3), 0);
  // chords of half a degree fall short of the arc by 1 - sin(x)/x, x = a quarter of a degree: 3.2e-6 of 314 mm
  expect(walked).toBeCloseTo(200 + 100 * Math.PI, 2);
  for (const support of project.runs[0]?.supports ?? []) {
    const i = axis.findIndex((p) => distance(p, support.point) < 1e-9);
    expect(i).toBeGreaterThan(0);
    const along = sub(axis[i + 1] as Vec3, axis[i - 1] as Vec3);
    expect(dot(along, support.axis as Vec3) / length(along)).toBeGreaterThan(0.9999);
  }
});

test('the hose of the known answer lies free of formers, posts and plate', () => {
  const solid = join(...parts.filter((p) => !p.name.endsWith('union')).map((p) => p.solid));
  const bvh = buildBvh({
    positions: Float32Array.from(solid.points.flat()),
    indices: Uint32Array.from(solid.indices),
    parts: [],
  });
  const axis = knownAxis().flatMap((p, i, all) => straight(p, all[i + 1] ?? p, 1));
  const least = Math.min(...axis.map(([x, y, z]) => nearestDistance(bvh, x, y, z, Number.POSITIVE_INFINITY)));
  // 12 mm is the rule for plain parts; points stand 1 mm apart, so a truly nearer place is at most half of that nearer.
  expect(least - 0.5 - HOSE_RADIUS_MM).toBeGreaterThan(12);
});
