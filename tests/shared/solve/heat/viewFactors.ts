import { add, anySquareTo, cross, scale, type Vec3 } from '../../../../shared/base/vec3.ts';
import { buildBvh } from '../../../../shared/geometry/bvh.ts';
import { aimByCosine, lookOut, type Share, shareOf } from '../../../../shared/solve/heat/lookOut.ts';
import { spreadPoints } from '../../../../shared/solve/heat/spreadPoints.ts';
import { meshOfTriangles, type Triangle } from '../../../arbitraries/triangles.ts';

/** A place on the sending surface and its normal, from two numbers in [0, 1). */
export type Sender = (u: number, v: number) => { readonly at: Vec3; readonly normal: Vec3 };

/** The view factor from a surface to a mesh, by the program's own rays. */
export function viewFactor(
  sender: Sender,
  target: readonly Triangle[],
  rays: number,
  seed = 1,
  before: readonly Triangle[] = [],
): Share {
  const points = spreadPoints(4, seed);
  const spread = new Float64Array(4);
  let hits = 0;
  const bvhOf = (triangles: readonly Triangle[]) => buildBvh(meshOfTriangles({ all: triangles }));
  lookOut(
    [bvhOf(target)],
    before.length > 0 ? [bvhOf(before)] : [],
    (i, ray) => {
      points(i, spread);
      const { at, normal } = sender(spread[0]!, spread[1]!);
      [ray.ox, ray.oy, ray.oz] = at;
      aimByCosine(ray, ...normal, spread[2]!, spread[3]!);
    },
    rays,
    () => {
      hits += 1;
    },
  );
  return shareOf(hits, rays);
}

/** A small flat piece. */
export function element(at: Vec3, normal: Vec3): Sender {
  return () => ({ at, normal });
}

export function discSender(centre: Vec3, normal: Vec3, radius: number): Sender {
  const a = anySquareTo(normal);
  const b = cross(normal, a);
  return (u, v) => {
    const r = radius * Math.sqrt(u);
    const turn = 2 * Math.PI * v;
    return { at: add(centre, add(scale(a, r * Math.cos(turn)), scale(b, r * Math.sin(turn)))), normal };
  };
}

export function rectangleSender(corner: Vec3, a: Vec3, b: Vec3, normal: Vec3): Sender {
  return (u, v) => ({ at: add(corner, add(scale(a, u), scale(b, v))), normal });
}

/** The outside of a cylinder along Z, from z = 0 to `height`; `inward` = its inside. */
export function cylinderSender(radius: number, height: number, inward = false): Sender {
  return (u, v) => {
    const turn = 2 * Math.PI * u;
    const out: Vec3 = [Math.cos(turn), Math.sin(turn), 0];
    return { at: [radius * out[0], radius * out[1], height * v], normal: inward ? scale(out, -1) : out };
  };
}

export function sphereSender(radius: number): Sender {
  return (u, v) => {
    const z = 1 - 2 * u;
    const r = Math.sqrt(1 - z * z);
    const normal: Vec3 = [r * Math.cos(2 * Math.PI * v), r * Math.sin(2 * Math.PI * v), z];
    return { at: scale(normal, radius), normal };
  };
}

const SIDES = 1024;

/** A regular polygon of the area of a disc. */
export function disc(centre: Vec3, normal: Vec3, radius: number): Triangle[] {
  const a = anySquareTo(normal);
  const b = cross(normal, a);
  const angle = (2 * Math.PI) / SIDES;
  const even = radius * Math.sqrt(angle / Math.sin(angle));
  const rim = (i: number): Vec3 =>
    add(centre, add(scale(a, even * Math.cos(i * angle)), scale(b, even * Math.sin(i * angle))));
  return Array.from({ length: SIDES }, (_, i): Triangle => [centre, rim(i), rim(i + 1)]);
}

export function rectangle(corner: Vec3, a: Vec3, b: Vec3): Triangle[] {
  const far = add(corner, add(a, b));
  return [
    [corner, add(corner, a), far],
    [corner, far, add(corner, b)],
  ];
}

/** The skin of a cylinder parallel to Z, round (x, y). */
export function tube(x: number, y: number, radius: number, from: number, to: number): Triangle[] {
  const angle = (2 * Math.PI) / SIDES;
  const rim = (i: number, z: number): Vec3 => [x + radius * Math.cos(i * angle), y + radius * Math.sin(i * angle), z];
  return Array.from({ length: SIDES }).flatMap((_, i) => [
    [rim(i, from), rim(i + 1, from), rim(i + 1, to)] as Triangle,
    [rim(i, from), rim(i + 1, to), rim(i, to)] as Triangle,
  ]);
}

const RINGS = 256;

/** A sphere of facets, corners on it. */
export function ball(centre: Vec3, radius: number): Triangle[] {
  const place = (i: number, j: number): Vec3 => {
    const up = (Math.PI * i) / RINGS;
    const turn = (2 * Math.PI * j) / (2 * RINGS);
    return add(centre, [
      radius * Math.sin(up) * Math.cos(turn),
      radius * Math.sin(up) * Math.sin(turn),
      radius * Math.cos(up),
    ]);
  };
  return Array.from({ length: RINGS }).flatMap((_, i) =>
    Array.from({ length: 2 * RINGS }).flatMap((_, j) => [
      [place(i, j), place(i + 1, j), place(i + 1, j + 1)] as Triangle,
      [place(i, j), place(i + 1, j + 1), place(i, j + 1)] as Triangle,
    ]),
  );
}
