import type { Vec3 } from '../../shared/base/vec3.ts';
import { type Frame, place } from './frame.ts';
import { inset, type Outline } from './outline.ts';
import { skin } from './skin.ts';
import { outward, type Solid } from './solid.ts';
import { triangulate, withHoles } from './triangulate.ts';

/** An outline raised along the frame's axis, with both edges bevelled. No holes. */
export function extrude(frame: Frame, outline: Outline, depth: number, bevel = 0): Solid {
  const layer = (along: number, by: number): Vec3[] =>
    (by === 0 ? outline : inset(outline, by)).map(([u, v]) => place(frame, along, u, v));
  const triangles = triangulate(outline);
  const rings =
    bevel === 0
      ? [layer(0, 0), layer(depth, 0)]
      : [layer(0, bevel), layer(bevel, 0), layer(depth - bevel, 0), layer(depth, bevel)];
  return skin(rings, { cap: () => triangles });
}

/** A plate with holes right through it, on the frame from 0 to `depth` along the axis. */
export function plate(frame: Frame, outline: Outline, holes: readonly Outline[], depth: number): Solid {
  const { points, numbers } = withHoles(outline, holes);
  const flat = triangulate(numbers.map((n) => points[n] as readonly [number, number]));
  const n = points.length;
  const vertices = [
    ...points.map(([u, v]) => place(frame, 0, u, v)),
    ...points.map(([u, v]) => place(frame, depth, u, v)),
  ];
  const indices: number[] = [];
  for (const t of flat) {
    const [a, b, c] = t.map((k) => numbers[k] as number) as [number, number, number];
    indices.push(a, c, b, n + a, n + b, n + c);
  }
  let first = 0;
  for (const loop of [outline, ...sortedLikeWithHoles(holes)]) {
    wall(indices, first, loop.length, n, first > 0);
    first += loop.length;
  }
  return outward({ points: vertices, indices });
}

function sortedLikeWithHoles(holes: readonly Outline[]): Outline[] {
  const right = (hole: Outline): number => Math.max(...hole.map(([u]) => u));
  return [...holes].sort((a, b) => right(b) - right(a));
}

function wall(indices: number[], first: number, count: number, n: number, hole: boolean): void {
  for (let k = 0; k < count; k++) {
    const a = first + k;
    const b = first + ((k + 1) % count);
    if (hole) indices.push(a, n + b, b, a, n + a, n + b);
    else indices.push(a, b, n + b, a, n + b, n + a);
  }
}
