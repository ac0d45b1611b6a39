import { ROUNDING_MM } from '../base/tolerances.ts';
import { addScaled, cross, distance, dot, length, lerp, scale, sub, type Vec3 } from '../base/vec3.ts';
import type { TriMesh } from './triMesh.ts';

/** A sharp or open edge of a mesh. `chain` is the same for edges that hang together. */
export interface RimEdge {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly chain: number;
}

/**
 * The edges within `reachMm` of a place at which a surface ends or folds by more than `foldRad`. Vertices of the same
 * coordinates are one, so that triangles that share nothing but places are joined too; how triangles are wound does not
 * count, nor do triangles without area. An edge of three triangles or more counts as sharp.
 * Cost: one pass over all triangles; the rest grows with those near the place.
 */
export function rimEdges(mesh: TriMesh, place: Vec3, reachMm: number, foldRad: number): readonly RimEdge[] {
  const found = new Found();
  for (const triangle of trianglesNear(mesh, place, reachMm)) found.add(mesh, triangle);
  return found.sharp(place, reachMm, Math.cos(foldRad));
}

/** Numbers of the triangles whose box touches the box round the ball: every one that touches the ball, and some more. */
function trianglesNear({ positions, indices }: TriMesh, place: Vec3, reachMm: number): number[] {
  const near: number[] = [];
  for (let t = 0; t < indices.length; t += 3) {
    const a = indices[t]! * 3;
    const b = indices[t + 1]! * 3;
    const c = indices[t + 2]! * 3;
    let out = false;
    for (let axis = 0; axis < 3 && !out; axis++) {
      const [p, q, r] = [positions[a + axis]!, positions[b + axis]!, positions[c + axis]!];
      const at = place[axis]!;
      out =
        (p < at - reachMm && q < at - reachMm && r < at - reachMm) ||
        (p > at + reachMm && q > at + reachMm && r > at + reachMm);
    }
    if (!out) near.push(t / 3);
  }
  return near;
}

/** An edge with the corners that stand across from it, one a triangle. */
interface Edge {
  readonly ends: readonly [number, number];
  readonly across: Vec3[];
}

/** Triangles taken together by the places of their corners. */
class Found {
  private readonly numberOf = new Map<string, number>();
  private readonly places: Vec3[] = [];
  private readonly edges = new Map<string, Edge>();

  add({ positions, indices }: TriMesh, triangle: number): void {
    const corners = [0, 1, 2].map((i): number => {
      const at = indices[triangle * 3 + i]! * 3;
      return this.place([positions[at]!, positions[at + 1]!, positions[at + 2]!]);
    }) as [number, number, number];
    const [p, q, r] = corners.map((corner) => this.places[corner] as Vec3) as [Vec3, Vec3, Vec3];
    if (length(cross(sub(q, p), sub(r, p))) <= ROUNDING_MM * ROUNDING_MM) return;
    this.edge(corners[0], corners[1], r);
    this.edge(corners[1], corners[2], p);
    this.edge(corners[2], corners[0], q);
  }

  private place(point: Vec3): number {
    const key = point.join(' ');
    const known = this.numberOf.get(key);
    if (known !== undefined) return known;
    this.numberOf.set(key, this.places.length);
    return this.places.push(point) - 1;
  }

  private edge(a: number, b: number, across: Vec3): void {
    const ends: readonly [number, number] = a < b ? [a, b] : [b, a];
    const key = ends.join(' ');
    const known = this.edges.get(key);
    if (known === undefined) this.edges.set(key, { ends, across: [across] });
    else known.across.push(across);
  }

  sharp(place: Vec3, reachMm: number, flatCosine: number): RimEdge[] {
    const kept = [...this.edges.values()].flatMap((edge) => {
      const [from, to] = edge.ends.map((end) => this.places[end] as Vec3) as [Vec3, Vec3];
      const near = distance(nearestOnEdge(from, to, place), place) <= reachMm;
      return near && isSharp(from, to, edge.across, flatCosine) ? [{ from, to, ends: edge.ends }] : [];
    });
    const chainOf = chains(kept.map((edge) => edge.ends));
    return kept.map(({ from, to, ends }) => ({ from, to, chain: chainOf(ends[0]) }));
  }
}

function nearestOnEdge(from: Vec3, to: Vec3, place: Vec3): Vec3 {
  const along = sub(to, from);
  const share = dot(sub(place, from), along) / dot(along, along);
  return lerp(from, to, Math.min(1, Math.max(0, share)));
}

/** The fold at an edge, by the directions in which its two triangles stand off it: opposite ones are flat. */
function isSharp(from: Vec3, to: Vec3, across: readonly Vec3[], flatCosine: number): boolean {
  const [one, other] = across;
  if (across.length !== 2 || one === undefined || other === undefined) return true;
  const along = sub(to, from);
  const off = (corner: Vec3): Vec3 => {
    const toCorner = sub(corner, from);
    const square = addScaled(toCorner, along, -dot(toCorner, along) / dot(along, along));
    return scale(square, 1 / length(square));
  };
  return -dot(off(one), off(other)) < flatCosine;
}

/** For each vertex of some edges, one number per set of edges that hang together (union-find by halving). */
function chains(edges: readonly (readonly [number, number])[]): (vertex: number) => number {
  const parent = new Map<number, number>();
  const root = (vertex: number): number => {
    let at = vertex;
    for (;;) {
      const up = parent.get(at) ?? at;
      if (up === at) return at;
      const over = parent.get(up) ?? up;
      parent.set(at, over);
      at = over;
    }
  };
  for (const [a, b] of edges) parent.set(root(a), root(b));
  return root;
}
