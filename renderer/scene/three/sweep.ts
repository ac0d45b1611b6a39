import {
  addScaled,
  anySquareTo,
  cross,
  distance,
  dot,
  scale,
  sub,
  unit,
  type Vec3,
} from '../../../shared/base/vec3.ts';

/** A round swept along a path, ready for a geometry. `uv` runs once around and, along, one per `textureLengthMm`. */
export interface Sweep {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly uvs: Float32Array;
  readonly indices: Uint32Array;
}

export interface SweepOptions {
  readonly radiusMm: number;
  /** flats around; 6 makes a hexagon */
  readonly sides: number;
  readonly textureLengthMm: number;
}

const NOTHING: Sweep = {
  positions: new Float32Array(),
  normals: new Float32Array(),
  uvs: new Float32Array(),
  indices: new Uint32Array(),
};

/**
 * Sweeps a circle along a path of at least two points, open at both ends. The frame is carried without twist (double
 * reflection, Wang and others 2008), so that the braid on the hose does not wind where the hose only bends.
 */
export function sweep(path: readonly Vec3[], options: SweepOptions): Sweep {
  const { sides } = options;
  // A socket may have no length; there is nothing of it to draw.
  const rings = path.some((p) => distance(p, path[0] as Vec3) > 0) ? path.length : 0;
  if (rings === 0) return NOTHING;
  const positions = new Float32Array(rings * (sides + 1) * 3);
  const normals = new Float32Array(positions.length);
  const uvs = new Float32Array(rings * (sides + 1) * 2);
  let across: Vec3 = anySquareTo(tangentAt(path, 0));
  let arc = 0;
  for (let ring = 0; ring < rings; ring++) {
    const along = tangentAt(path, ring);
    if (ring > 0) {
      across = carry(path, ring, across, along);
      arc += distance(path[ring - 1] as Vec3, path[ring] as Vec3);
    }
    const side = cross(along, across);
    for (let s = 0; s <= sides; s++) {
      const angle = (s / sides) * 2 * Math.PI;
      const outward = addScaled(scale(across, Math.cos(angle)), side, Math.sin(angle));
      const vertex = ring * (sides + 1) + s;
      positions.set(addScaled(path[ring] as Vec3, outward, options.radiusMm), vertex * 3);
      normals.set(outward, vertex * 3);
      uvs.set([s / sides, arc / options.textureLengthMm], vertex * 2);
    }
  }
  return { positions, normals, uvs, indices: ringIndices(rings, sides) };
}

function tangentAt(path: readonly Vec3[], i: number): Vec3 {
  const before = path[Math.max(0, i - 1)] as Vec3;
  const after = path[Math.min(path.length - 1, i + 1)] as Vec3;
  return unit(sub(after, before));
}

/** The frame's first direction carried from ring - 1 to ring by two reflections. */
function carry(path: readonly Vec3[], ring: number, across: Vec3, along: Vec3): Vec3 {
  const before = tangentAt(path, ring - 1);
  const step = sub(path[ring] as Vec3, path[ring - 1] as Vec3);
  const firstNorm = dot(step, step);
  if (firstNorm === 0) return across;
  const acrossReflected = addScaled(across, step, (-2 * dot(step, across)) / firstNorm);
  const alongReflected = addScaled(before, step, (-2 * dot(step, before)) / firstNorm);
  const turn = sub(along, alongReflected);
  const secondNorm = dot(turn, turn);
  if (secondNorm === 0) return acrossReflected;
  return addScaled(acrossReflected, turn, (-2 * dot(turn, acrossReflected)) / secondNorm);
}

function ringIndices(rings: number, sides: number): Uint32Array {
  const indices = new Uint32Array((rings - 1) * sides * 6);
  let at = 0;
  for (let ring = 0; ring + 1 < rings; ring++) {
    for (let s = 0; s < sides; s++) {
      const a = ring * (sides + 1) + s;
      const b = a + sides + 1;
      indices.set([a, a + 1, b, b, a + 1, b + 1], at);
      at += 6;
    }
  }
  return indices;
}
