import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { ClearanceField } from '../../../../shared/solve/search/problem.ts';

/** Obstacles whose distance is known in closed form: margins here are exact, with nothing of the product's in them. */
export type Obstacle =
  | { readonly kind: 'ball'; readonly centre: Vec3; readonly radius: number }
  | { readonly kind: 'block'; readonly min: Vec3; readonly max: Vec3 }
  /** the wall x = `x` without a round hole: distance to a plate of no thickness */
  | { readonly kind: 'wall'; readonly x: number; readonly holes: readonly { y: number; z: number; radius: number }[] }
  | { readonly kind: 'post'; readonly x: number; readonly y: number; readonly radius: number };

export function obstacleDistance(o: Obstacle, x: number, y: number, z: number): number {
  if (o.kind === 'ball') return Math.hypot(x - o.centre[0], y - o.centre[1], z - o.centre[2]) - o.radius;
  if (o.kind === 'post') return Math.hypot(x - o.x, y - o.y) - o.radius;
  if (o.kind === 'block') {
    const out = [0, 1, 2].map((i) => {
      const p = [x, y, z][i] as number;
      return Math.max((o.min[i] as number) - p, p - (o.max[i] as number));
    });
    const outside = Math.hypot(...out.map((d) => Math.max(0, d)));
    return outside > 0 ? outside : Math.max(...out);
  }
  for (const hole of o.holes) {
    const inside = hole.radius - Math.hypot(y - hole.y, z - hole.z);
    if (inside > 0) return Math.hypot(x - o.x, inside);
  }
  return Math.abs(x - o.x);
}

/** What is kept near a held place: half the distance from it, written down anew here. */
const HELD_SLOPE = 0.5;

const CELL_MM = 20;
/** Half the diagonal of a cell: what the coarse bound gives away. */
const BLUR_MM = (CELL_MM * Math.sqrt(3)) / 2;

/**
 * Centreline field for a hose that must keep `keepMm` from every obstacle. The coarse bound is the margin at the middle
 * of a 20 mm cell less half the cell's diagonal, kept from the first time it is asked for. held: places at which the hose is held,
 * near which it keeps less.
 */
export function analyticField(
  obstacles: readonly Obstacle[],
  keepMm: number,
  bounds: ClearanceField['bounds'],
  held: readonly Vec3[] = [],
): ClearanceField {
  const fromHeld = (x: number, y: number, z: number): number =>
    held.reduce((least, p) => Math.min(least, Math.hypot(x - p[0], y - p[1], z - p[2])), Number.POSITIVE_INFINITY);
  const lipschitz = held.length === 0 ? 1 : 1 + HELD_SLOPE;
  const balls = obstacles.filter((o) => o.kind === 'ball');
  const flat = Float64Array.from(balls.flatMap((o) => [...o.centre, o.radius]));
  const others = obstacles.filter((o) => o.kind !== 'ball');
  const marginMm = (x: number, y: number, z: number): number => {
    let least = 1e4;
    for (let i = 0; i < flat.length; i += 4) {
      const [dx, dy, dz] = [x - (flat[i] as number), y - (flat[i + 1] as number), z - (flat[i + 2] as number)];
      const d = Math.sqrt(dx * dx + dy * dy + dz * dz) - (flat[i + 3] as number);
      if (d < least) least = d;
    }
    for (const o of others) least = Math.min(least, obstacleDistance(o, x, y, z));
    return least - Math.min(keepMm, HELD_SLOPE * fromHeld(x, y, z));
  };
  const [nx, ny, nz] = [0, 1, 2].map(
    (i) => Math.ceil(((bounds.max[i] as number) - (bounds.min[i] as number)) / CELL_MM) + 2,
  );
  const kept = new Float64Array((nx as number) * (ny as number) * (nz as number)).fill(Number.NaN);
  const coarseMarginMm = (x: number, y: number, z: number): number => {
    const i = Math.floor((x - bounds.min[0]) / CELL_MM);
    const j = Math.floor((y - bounds.min[1]) / CELL_MM);
    const k = Math.floor((z - bounds.min[2]) / CELL_MM);
    const cell = i + (nx as number) * (j + (ny as number) * k);
    const middle = (axis: 0 | 1 | 2, n: number): number => bounds.min[axis] + (n + 0.5) * CELL_MM;
    if (Number.isNaN(kept[cell])) kept[cell] = marginMm(middle(0, i), middle(1, j), middle(2, k)) - lipschitz * BLUR_MM;
    return kept[cell] ?? marginMm(x, y, z);
  };
  const mostMarginMm = (x: number, y: number, z: number): number => coarseMarginMm(x, y, z) + 2 * lipschitz * BLUR_MM;
  const steepest = (x: number, y: number, z: number, withinMm: number): number =>
    HELD_SLOPE * (fromHeld(x, y, z) - withinMm) >= keepMm ? 1 : lipschitz;
  return { bounds, lipschitz, steepest, coarseMarginMm, mostMarginMm, marginMm };
}
