import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import { bench, describe } from 'vitest';
import { seededRandom } from '../../shared/base/random.ts';
import { boxOfMesh, growBox } from '../../shared/geometry/box.ts';
import { buildBvh, firstHit, nearestDistance, newRayHit } from '../../shared/geometry/bvh.ts';
import { buildDistanceGrid } from '../../shared/geometry/distanceGrid.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/** Exact closest points: our box hierarchy beside three-mesh-bvh (SAH), on the same made-up bay and points. */
const TRIANGLES = 200_000;
const QUERIES = 5_000;
const RINGS = 40;
/** mm. What a lay asks: is anything nearer than this? */
const BOUND_MM = 32;

const mesh = madeUpBay(TRIANGLES);
const curve = pointsAlongCurves(QUERIES);
const spread = pointsInBox(QUERIES);
const bvh = buildBvh(mesh);
const geometry = new BufferGeometry();
geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
const target = { point: new Vector3(), distance: 0, faceIndex: 0 };
const place = new Vector3();
const hit = newRayHit();

function theirTree(): MeshBVH {
  geometry.setIndex(new BufferAttribute(mesh.indices.slice(), 1));
  return new MeshBVH(geometry, { strategy: SAH });
}
const theirs = theirTree();

function askOurs(points: Float64Array, boundMm: number): number {
  let sum = 0;
  for (let at = 0; at < points.length; at += 3) {
    const distance = nearestDistance(bvh, points[at]!, points[at + 1]!, points[at + 2]!, boundMm);
    if (distance < Infinity) sum += distance;
  }
  return sum;
}

function askTheirs(points: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < points.length; at += 3)
    sum += theirs.closestPointToPoint(place.fromArray(points, at), target)!.distance;
  return sum;
}

function castRays(): number {
  let hits = 0;
  for (let at = 0; at + 5 < spread.length; at += 3) {
    place.set(spread[at + 3]! - spread[at]!, spread[at + 4]! - spread[at + 1]!, spread[at + 5]! - spread[at + 2]!);
    place.normalize();
    if (firstHit(bvh, spread[at]!, spread[at + 1]!, spread[at + 2]!, place.x, place.y, place.z, Infinity, hit)) hits++;
  }
  return hits;
}

describe('exact distance, 200,000 triangles', () => {
  bench(REFERENCE, () => keep(reference()));
  bench('closest point along curves, 5,000', () => keep(askOurs(curve, Infinity)));
  bench('closest point along curves, three-mesh-bvh', () => keep(askTheirs(curve)));
  bench('closer than 32 mm along curves, 5,000', () => keep(askOurs(curve, BOUND_MM)));
  bench('closest point anywhere, 5,000', () => keep(askOurs(spread, Infinity)));
  bench('closest point anywhere, three-mesh-bvh', () => keep(askTheirs(spread)));
  bench('first hit of a ray, 5,000', () => keep(castRays()));
  bench('build', () => keep(buildBvh(mesh).triangles.length), {
    iterations: 3,
    time: 0,
    warmupIterations: 1,
    warmupTime: 0,
  });
  bench('build, three-mesh-bvh SAH', () => keep(theirTree().geometry.index!.count), {
    iterations: 3,
    time: 0,
    warmupIterations: 1,
    warmupTime: 0,
  });
  bench('distance grid of 10 mm', () => keep(buildDistanceGrid(mesh, undefined, growBox(boxOfMesh(mesh), 40), 10).nx), {
    iterations: 3,
    time: 0,
    warmupIterations: 1,
    warmupTime: 0,
  });
});

/** Rough rings (tori with noise) of many sizes in a space of 1200 x 900 x 700 mm, about as many triangles as asked. */
function madeUpBay(triangles: number): TriMesh {
  const random = seededRandom(1);
  const side = Math.round(Math.sqrt(triangles / RINGS / 2));
  const positions: number[] = [];
  const indices: number[] = [];
  for (let ring = 0; ring < RINGS; ring++) {
    const first = positions.length / 3;
    const centre = [random() * 1200, random() * 900, random() * 700] as const;
    const large = 40 + random() * 160;
    const small = large * (0.15 + random() * 0.4);
    const tilt = random() * 3;
    for (let i = 0; i < side; i++) {
      for (let j = 0; j < side; j++) {
        const u = (2 * Math.PI * i) / side;
        const v = (2 * Math.PI * j) / side;
        const r = large + small * Math.cos(v) + random();
        const [x, y, z] = [r * Math.cos(u), r * Math.sin(u), small * Math.sin(v) + random()];
        const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
        positions.push(centre[0] + x, centre[1] + c * y - s * z, centre[2] + s * y + c * z);
        const [a, b] = [first + i * side, first + ((i + 1) % side) * side];
        const k = (j + 1) % side;
        indices.push(a + j, b + j, b + k, a + j, b + k, a + k);
      }
    }
  }
  const triangleCount = indices.length / 3;
  return {
    positions: new Float32Array(positions),
    indices: new Uint32Array(indices),
    parts: [{ name: 'rings', firstTriangle: 0, triangleCount }],
  };
}

/** Points 3 mm apart along smooth closed curves through the bay: what a lay asks. */
function pointsAlongCurves(count: number): Float64Array {
  const points = new Float64Array(3 * count);
  for (let n = 0; n < count; n++) {
    const t = n / 150;
    points[3 * n] = 600 + 500 * Math.sin(0.91 * t);
    points[3 * n + 1] = 450 + 400 * Math.sin(1.07 * t + 1);
    points[3 * n + 2] = 350 + 300 * Math.sin(1.19 * t + 2);
  }
  return points;
}

function pointsInBox(count: number): Float64Array {
  const random = seededRandom(2);
  const points = new Float64Array(3 * count);
  for (let n = 0; n < count; n++) points.set([random() * 1200, random() * 900, random() * 700], 3 * n);
  return points;
}
