import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { describe, expect, test } from 'vitest';
import { hillclimbBay } from '../../models/bays/hillclimb/make/bay.ts';
import { PORTS } from '../../models/bays/hillclimb/make/ports.ts';
import { hillclimbProject, MESH_FILE, projectText } from '../../models/bays/hillclimb/make/project.ts';
import type { Solid } from '../../models/shapes/solid.ts';
import { signedVolume6 } from '../../models/shapes/solid.ts';
import { writeGlb } from '../../models/shapes/writeGlb.ts';
import { angleBetween, distance, type Vec3 } from '../../shared/base/vec3.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';

const FOLDER = new URL('../../models/bays/hillclimb/', import.meta.url);
const parts = hillclimbBay();
const glb = await writeGlb('hillclimb-bay', parts);
const project = hillclimbProject(glb);

// WRITE_MODELS=1 writes what the makers make; without it the files on disk are only compared.
if (process.env['WRITE_MODELS'] === '1') {
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(new URL(MESH_FILE, FOLDER), glb);
  writeFileSync(new URL('project.json', FOLDER), projectText(project));
}

describe('the hill-climb bay', () => {
  test('is made again with the same bytes as the file', () => {
    const stored = readFileSync(new URL(MESH_FILE, FOLDER));
    expect(bytesToHex(sha256(glb))).toBe(bytesToHex(sha256(stored)));
    expect(readFileSync(new URL('project.json', FOLDER), 'utf8')).toBe(projectText(project));
  });

  test('the project reads without a problem and names files that are there', () => {
    const read = parseProject(projectText(project));
    expect(read.ok ? [] : read.problems).toEqual([]);
    for (const path of Object.values(project.tables).flatMap((paths) => paths ?? []))
      expect(existsSync(new URL(path, FOLDER))).toBe(true);
  });

  test('has 100,000 triangles and more, in under 3 MB, each part under its own name', () => {
    const triangles = parts.reduce((sum, p) => sum + p.solid.indices.length / 3, 0);
    expect(triangles).toBeGreaterThanOrEqual(100_000);
    expect(glb.length).toBeLessThan(3_000_000);
    expect(new Set(parts.map((p) => p.name)).size).toBe(parts.length);
    for (const p of parts) expect(p.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  test('every part is finite and closed: each edge is walked once each way', () => {
    for (const p of parts) {
      expect(p.solid.points.every((v) => v.every(Number.isFinite))).toBe(true);
      expect([p.name, unmatchedEdges(p.solid)]).toEqual([p.name, 0]);
      expect(signedVolume6(p.solid)).toBeGreaterThan(0);
    }
  });

  test.each(PORTS.map((p) => [p.id, p] as const))('the seat of %s is a flat ring square to its axis', (id, port) => {
    const solid = parts.find((p) => p.name === `${id}-union`)?.solid as Solid;
    const ring = seatRing(solid, port.seatPoint, port.axis);
    const middle = [0, 1, 2].map((i) => ring.reduce((sum, v) => sum + v[i as 0], 0) / ring.length) as unknown as Vec3;
    expect(ring.length).toBeGreaterThanOrEqual(24);
    expect(distance(middle, port.seatPoint)).toBeLessThan(0.005);
    expect(angleBetween(port.axis, port.up)).toBeCloseTo(Math.PI / 2, 5);
  });

  test('every part named in a skin is in the mesh', () => {
    const names = parts.map((p) => p.name);
    for (const pattern of project.bay.skins.flatMap((s) => s.parts)) {
      const match = new RegExp(`^${pattern.replaceAll('*', '.*')}$`);
      expect([pattern, names.some((n) => match.test(n))]).toEqual([pattern, true]);
    }
  });
});

/** Vertices in the plane through the seat, square to the axis, within 0.01 mm (axes are stated to six digits). */
function seatRing(solid: Solid, seat: Vec3, axis: Vec3): Vec3[] {
  return solid.points.filter((v) => {
    const d: Vec3 = [v[0] - seat[0], v[1] - seat[1], v[2] - seat[2]];
    return Math.abs(d[0] * axis[0] + d[1] * axis[1] + d[2] * axis[2]) < 0.01;
  });
}

function unmatchedEdges(solid: Solid): number {
  const edges = new Map<number, number>();
  const n = solid.points.length;
  for (let i = 0; i < solid.indices.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = solid.indices[i + k] as number;
      const b = solid.indices[i + ((k + 1) % 3)] as number;
      const key = a < b ? a * n + b : b * n + a;
      edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  }
  return [...edges.values()].filter((v) => v !== 0).length;
}
