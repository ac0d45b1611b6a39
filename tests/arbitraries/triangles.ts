import { addScaled, anySquareTo, cross, distance, lerp, scale, type Vec3 } from '../../shared/base/vec3.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';

export type Triangle = readonly [Vec3, Vec3, Vec3];

/** A sheet of quads over rows of points, each row as long as the others. */
function sheet(rows: readonly (readonly Vec3[])[]): Triangle[] {
  return rows.slice(1).flatMap((row, i) =>
    row.slice(1).flatMap((corner, j): Triangle[] => {
      const [a, b, c] = [rows[i]![j]!, rows[i]![j + 1]!, row[j]!];
      return [
        [a, b, corner],
        [a, corner, c],
      ];
    }),
  );
}

/** A flat plate round `centre`, spanned by two half edges. */
export function plate(centre: Vec3, u: Vec3, v: Vec3): Triangle[] {
  const corner = (a: number, b: number): Vec3 => addScaled(addScaled(centre, u, a), v, b);
  return sheet([
    [corner(-1, -1), corner(1, -1)],
    [corner(-1, 1), corner(1, 1)],
  ]);
}

/** A closed box round `centre` with three half edges, square to each other. */
export function block(centre: Vec3, halves: readonly [Vec3, Vec3, Vec3]): Triangle[] {
  return [0, 1, 2].flatMap((axis) =>
    [1, -1].flatMap((side) =>
      plate(addScaled(centre, halves[axis]!, side), halves[(axis + 1) % 3]!, halves[(axis + 2) % 3]!),
    ),
  );
}

function ring(centre: Vec3, axis: Vec3, radiusMm: number, sides: number): Vec3[] {
  const u = anySquareTo(axis);
  const v = cross(axis, u);
  return Array.from({ length: sides + 1 }, (_, i) => {
    const turn = (2 * Math.PI * (i % sides)) / sides;
    return addScaled(addScaled(centre, u, radiusMm * Math.cos(turn)), v, radiusMm * Math.sin(turn));
  });
}

/** A closed cylinder. axis: unit; centre: middle of it. */
export function cylinder(centre: Vec3, axis: Vec3, radiusMm: number, halfMm: number, sides = 16): Triangle[] {
  const radii = [0, radiusMm, radiusMm, 0];
  return sheet(radii.map((r, i) => ring(addScaled(centre, axis, i < 2 ? -halfMm : halfMm), axis, r, sides)));
}

/** A ring of pipe. axis: unit, of the ring. */
export function torus(centre: Vec3, axis: Vec3, ringMm: number, pipeMm: number, sides = 24): Triangle[] {
  const round = ring([0, 0, 0], axis, 1, sides);
  const rows = Array.from({ length: 11 }, (_, j) => {
    const turn = (2 * Math.PI * (j % 10)) / 10;
    return round.map((out) =>
      addScaled(addScaled(centre, out, ringMm + pipeMm * Math.cos(turn)), axis, pipeMm * Math.sin(turn)),
    );
  });
  return sheet(rows);
}

/** The skin of a pipe round a row of places, every place at least `radiusMm` inside it; closed by a flat disc at both ends. */
export function pipe(
  places: readonly { readonly point: Vec3; readonly direction: Vec3 }[],
  radiusMm: number,
  sides = 16,
): Triangle[] {
  const wide = radiusMm / Math.cos(Math.PI / sides);
  let u = anySquareTo(places[0]!.direction);
  const rows = places.map(({ point, direction }) => {
    const v = cross(direction, u);
    u = scale(cross(v, direction), 1 / Math.hypot(...v));
    return Array.from({ length: sides + 1 }, (_, i) => {
      const turn = (2 * Math.PI * (i % sides)) / sides;
      return addScaled(addScaled(point, u, wide * Math.cos(turn)), cross(direction, u), wide * Math.sin(turn));
    });
  });
  const closed = (point: Vec3, row: Vec3[]): Triangle[] => sheet([row.map(() => point), row]);
  return [...sheet(rows), ...closed(places[0]!.point, rows[0]!), ...closed(places.at(-1)!.point, rows.at(-1)!)];
}

/** mm. Pieces of triangle this small are no longer cut finer. */
const FINEST_MM = 2;

/** What is left of triangles when everything nearer than `keepMm` by `distanceTo` is cut away, and no more than about 4 mm beyond. */
export function carved(
  triangles: readonly Triangle[],
  distanceTo: (point: Vec3) => number,
  keepMm: number,
): Triangle[] {
  const left: Triangle[] = [];
  const open = [...triangles];
  for (let next = open.pop(); next; next = open.pop()) {
    const [a, b, c] = next;
    const middle: Vec3 = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
    const reach = Math.max(distance(middle, a), distance(middle, b), distance(middle, c));
    const away = distanceTo(middle);
    if (away - reach >= keepMm) left.push(next);
    else if (reach > FINEST_MM && away + reach >= keepMm) open.push(...halves(next));
  }
  return left;
}

/** Cut across the longest edge. */
function halves([a, b, c]: Triangle): [Triangle, Triangle] {
  const [ab, bc, ca] = [distance(a, b), distance(b, c), distance(c, a)];
  if (bc > ab && bc >= ca) return halves([b, c, a]);
  if (ca > ab) return halves([c, a, b]);
  const m = lerp(a, b, 0.5);
  return [
    [a, m, c],
    [m, b, c],
  ];
}

/** Named heaps of triangles as one mesh, a part each. */
export function meshOfTriangles(parts: Readonly<Record<string, readonly Triangle[]>>): TriMesh {
  const all = Object.values(parts).flat();
  let firstTriangle = 0;
  return {
    positions: Float32Array.from(all.flat(2)),
    indices: Uint32Array.from({ length: 3 * all.length }, (_, i) => i),
    parts: Object.entries(parts).map(([name, triangles]) => {
      const part = { name, firstTriangle, triangleCount: triangles.length };
      firstTriangle += triangles.length;
      return part;
    }),
  };
}
