import { add, scale, type Vec3 } from '../../shared/base/vec3.ts';
import { outward, type Solid } from './solid.ts';

export interface SkinOptions {
  /** the last ring joins the first; default false: both ends are capped */
  readonly loop?: boolean;
  /** closes an end; default: a fan from the middle of the ring */
  readonly cap?: (ring: readonly Vec3[]) => readonly (readonly [number, number, number])[];
}

/** Triangles between neighbouring rings of equal count; a ring of one point is a pole. The result is closed and wound outward. */
export function skin(rings: readonly (readonly Vec3[])[], options: SkinOptions = {}): Solid {
  const points: Vec3[] = [];
  const indices: number[] = [];
  const starts: number[] = [];
  for (const ring of rings) {
    starts.push(points.length);
    points.push(...ring);
  }
  const pairs = options.loop === true ? rings.length : rings.length - 1;
  for (let i = 0; i < pairs; i++) {
    const j = (i + 1) % rings.length;
    bridge(indices, starts[i] as number, (rings[i] as Vec3[]).length, starts[j] as number, (rings[j] as Vec3[]).length);
  }
  if (options.loop !== true) {
    close(points, indices, starts[0] as number, rings[0] as Vec3[], true, options.cap);
    const last = rings.length - 1;
    close(points, indices, starts[last] as number, rings[last] as Vec3[], false, options.cap);
  }
  return outward({ points, indices });
}

function bridge(indices: number[], a: number, aCount: number, b: number, bCount: number): void {
  const count = Math.max(aCount, bCount);
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    if (aCount > 1) indices.push(a + k, a + next, b + (bCount > 1 ? next : 0));
    if (bCount > 1) indices.push(a + (aCount > 1 ? k : 0), b + next, b + k);
  }
}

function close(
  points: Vec3[],
  indices: number[],
  start: number,
  ring: readonly Vec3[],
  first: boolean,
  cap: SkinOptions['cap'],
): void {
  if (ring.length === 1) return;
  const push = (a: number, b: number, c: number): void => {
    indices.push(...(first ? [b, a, c] : [a, b, c]));
  };
  if (cap !== undefined) {
    for (const [a, b, c] of cap(ring)) push(start + a, start + b, start + c);
    return;
  }
  const middle = points.length;
  points.push(scale(ring.reduce(add), 1 / ring.length));
  for (let k = 0; k < ring.length; k++) push(start + k, start + ((k + 1) % ring.length), middle);
}
