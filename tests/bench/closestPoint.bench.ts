/**
 * Exact closest points: our box hierarchy against three-mesh-bvh (SAH), on the same made-up bay and points, in one run.
 * Only the ratios mean anything. Run by:
 *   npx rolldown tests/bench/closestPoint.bench.ts --platform node --file .build/bench/closestPoint.mjs
 *   node .build/bench/closestPoint.mjs [thousands of triangles]
 */
import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import { seededRandom } from '../../shared/base/random.ts';
import { boxOfMesh, growBox } from '../../shared/geometry/box.ts';
import { buildBvh, firstHit, nearestDistance, newRayHit } from '../../shared/geometry/bvh.ts';
import { buildDistanceGrid } from '../../shared/geometry/distanceGrid.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';

const ROUNDS = 3;
const QUERIES = 50_000;
const RINGS = 40;

const thousands = Number(process.argv[2] ?? 1000);
const mesh = madeUpBay(thousands * 1000);
const curve = pointsAlongCurves(QUERIES);
const spread = pointsInBox(QUERIES);

const ours = { build: best(() => buildBvh(mesh)), bvh: buildBvh(mesh) };
const geometry = new BufferGeometry();
geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
const makeTheirs = () => {
  geometry.setIndex(new BufferAttribute(mesh.indices.slice(), 1));
  return new MeshBVH(geometry, { strategy: SAH });
};
const theirs = { build: best(makeTheirs), bvh: makeTheirs() };
const target = { point: new Vector3(), distance: 0, faceIndex: 0 };
const place = new Vector3();

const askOurs = (points: Float64Array, bound: number) => () => {
  let sum = 0;
  for (let at = 0; at < points.length; at += 3) {
    const distance = nearestDistance(ours.bvh, points[at]!, points[at + 1]!, points[at + 2]!, bound);
    if (distance < Infinity) sum += distance;
  }
  return sum;
};
const askTheirs = (points: Float64Array) => () => {
  let sum = 0;
  for (let at = 0; at < points.length; at += 3)
    sum += theirs.bvh.closestPointToPoint(place.fromArray(points, at), target)!.distance;
  return sum;
};
const hit = newRayHit();
const rays = () => {
  let hits = 0;
  for (let at = 0; at + 3 < spread.length; at += 3) {
    place.set(spread[at + 3]! - spread[at]!, spread[at + 4]! - spread[at + 1]!, spread[at + 5]! - spread[at + 2]!);
    place.normalize();
    const { x, y, z } = place;
    if (firstHit(ours.bvh, spread[at]!, spread[at + 1]!, spread[at + 2]!, x, y, z, Infinity, hit)) hits++;
  }
  return hits;
};

const along = [best(askOurs(curve, Infinity)), best(askOurs(curve, 32)), best(askTheirs(curve))] as const;
const within = [best(askOurs(spread, Infinity)), best(askTheirs(spread))] as const;
const grid = best(() => buildDistanceGrid(mesh, undefined, growBox(boxOfMesh(mesh), 50), 10));
const perSecond = (seconds: number) => `${Math.round(QUERIES / seconds / 1000)} k/s`;
const row = (what: string, mine: string, ratio: string) =>
  `${what.padEnd(34)}${mine.padStart(10)}${ratio.padStart(12)}\n`;
const agree = Math.abs(askOurs(curve, Infinity)() / askTheirs(curve)() - 1);
process.stdout.write(
  [
    row(`${mesh.indices.length / 3} triangles`, 'ours', 'times as fast as three-mesh-bvh'),
    row('build', `${ours.build.toFixed(2)} s`, (theirs.build / ours.build).toFixed(2)),
    row('closest point along curves', perSecond(along[0]), (along[2] / along[0]).toFixed(2)),
    row('  the same, nearer than 32 mm', perSecond(along[1]), (along[2] / along[1]).toFixed(2)),
    row('closest point anywhere', perSecond(within[0]), (within[1] / within[0]).toFixed(2)),
    row('first hit of a ray', perSecond(best(rays)), ''),
    row('distance grid, 10 mm', `${grid.toFixed(2)} s`, ''),
    row('relative difference of the sums', agree.toExponential(1), ''),
  ].join(''),
);

/** Seconds of processor time of the quickest of a few rounds: less upset by what else the machine does than the clock. */
function best(work: () => unknown): number {
  let quickest = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    quickest = Math.min(quickest, user + system);
  }
  return quickest / 1e6;
}

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
