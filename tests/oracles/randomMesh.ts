import type { RandomSource } from '../../shared/base/random.ts';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';

/** A mesh of one part over separate triangles. */
export function soupOf(corners: readonly Vec3[]): TriMesh {
  const indices = new Uint32Array(corners.length).map((_, n) => n);
  const count = corners.length / 3;
  const parts = count === 0 ? [] : [{ name: 'soup', firstTriangle: 0, triangleCount: count }];
  return { positions: new Float32Array(corners.flat()), indices, parts };
}

export function randomPoint(random: RandomSource, sizeMm: number): Vec3 {
  return [(random() - 0.5) * sizeMm, (random() - 0.5) * sizeMm, (random() - 0.5) * sizeMm];
}

/**
 * Triangles of all shapes in a cube of sizeMm about `centre`: small and large, needles, ones without area (two or three
 * corners together, corners on one line), and some repeated.
 */
export function randomSoup(random: RandomSource, count: number, sizeMm: number, centre: Vec3 = [0, 0, 0]): TriMesh {
  const corners: Vec3[] = [];
  for (let n = 0; n < count; n++) {
    const reach = sizeMm * 0.5 * random() ** 3;
    const a = randomPoint(random, sizeMm);
    const ab = randomPoint(random, reach);
    const ac = randomPoint(random, reach);
    corners.push(...shaped(Math.floor(random() * 12), a, ab, ac, random));
  }
  const moved = corners.map((p): Vec3 => [p[0] + centre[0], p[1] + centre[1], p[2] + centre[2]]);
  return soupOf(moved);
}

function shaped(kind: number, a: Vec3, ab: Vec3, ac: Vec3, random: RandomSource): Vec3[] {
  const at = (s: number, t: number): Vec3 => [
    a[0] + s * ab[0] + t * ac[0],
    a[1] + s * ab[1] + t * ac[1],
    a[2] + s * ab[2] + t * ac[2],
  ];
  if (kind === 0) return [a, a, a];
  if (kind === 1) return [a, a, at(1, 0)];
  if (kind === 2) return [a, at(1, 0), a];
  if (kind === 3) return [at(1, 0), a, a];
  if (kind === 4) return [a, at(1, 0), at(random() * 2, 0)];
  if (kind === 5) return [a, at(1, 0), at(1, 1e-4)];
  return [a, at(1, 0), at(0, 1)];
}
