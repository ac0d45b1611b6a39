import { type RandomSource, seededRandom } from '../../shared/base/random.ts';
import { distance, type Vec3 } from '../../shared/base/vec3.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { ResolvedProject } from '../../shared/document/project/resolve.ts';
import { PLAIN_SKIN } from '../../shared/document/project/schema.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from './rig.ts';

const FACES = [
  [0, 1, 3, 2],
  [4, 6, 7, 5],
  [0, 4, 5, 1],
  [2, 3, 7, 6],
  [0, 2, 6, 4],
  [1, 5, 7, 3],
] as const;

interface Block {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Blocks as one mesh, a part each. */
export function meshOfBlocks(blocks: readonly Block[]): TriMesh {
  const positions = blocks.flatMap(({ min, max }) =>
    Array.from({ length: 8 }, (_, i) => [
      i & 1 ? max[0] : min[0],
      i & 2 ? max[1] : min[1],
      i & 4 ? max[2] : min[2],
    ]).flat(),
  );
  const indices = blocks.flatMap((_, b) =>
    FACES.flatMap(([p, q, r, s]) => [p, q, r, p, r, s].map((corner) => 8 * b + corner)),
  );
  return {
    positions: Float32Array.from(positions),
    indices: Uint32Array.from(indices),
    parts: blocks.map((_, b) => ({ name: `block-${b}`, firstTriangle: 12 * b, triangleCount: 12 })),
  };
}

export interface BlockBay {
  readonly mesh: TriMesh;
  readonly bay: BayIndex;
  readonly project: ResolvedProject;
}

/**
 * A seeded bay: two plates that face each other, blocks strewn between, and `runs` runs of a thin hose from plate to
 * plate, with straight and angled ends by turns. Ports are kept apart from each other and from the blocks.
 */
export function blockBay(seed: number, blockCount: number, runs: number): BlockBay {
  const random = seededRandom(seed);
  const ports: Vec3[] = [];
  const blocks: Block[] = [
    { min: [-20, -20, -20], max: [0, 620, 420] },
    { min: [700, -20, -20], max: [720, 620, 420] },
  ];
  const place = (x: number): Vec3 => {
    for (;;) {
      const p: Vec3 = [x, 60 + 480 * random(), 60 + 280 * random()];
      if (ports.every((q) => distance(p, q) > 110)) {
        ports.push(p);
        return p;
      }
    }
  };
  const seats = Array.from({ length: runs }, () => [place(0), place(700)] as const);
  while (blocks.length < 2 + blockCount) strewBlock(random, blocks);
  const mesh = meshOfBlocks(blocks);
  return { mesh, bay: buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED), project: projectOf(seats) };
}

function strewBlock(random: RandomSource, blocks: Block[]): void {
  const half = [15 + 40 * random(), 15 + 40 * random(), 15 + 40 * random()] as const;
  const centre = [240 + 220 * random(), 600 * random(), 400 * random()] as const;
  blocks.push({
    min: [centre[0] - half[0], centre[1] - half[1], centre[2] - half[2]],
    max: [centre[0] + half[0], centre[1] + half[1], centre[2] + half[2]],
  });
}

function projectOf(seats: readonly (readonly [Vec3, Vec3])[]): ResolvedProject {
  const hose = exampleHose({ insideDiameterMm: 6, outsideDiameterMm: 10, minBendRadiusMm: 45 });
  const straight = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
  const angled = exampleEnd(45, { seatToBendMm: 25, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const all = seats.map(([a, b], i) => {
    const from = examplePort(`a${i}`, { seatPoint: [...a], axis: [1, 0, 0] });
    const to = examplePort(`b${i}`, { seatPoint: [...b], axis: [-1, 0, 0] });
    const ends: [typeof straight, typeof straight] = [i % 2 === 0 ? straight : angled, i % 3 === 0 ? straight : angled];
    const run = { id: `run-${i}`, a: { port: `a${i}`, end: ends[0].id }, b: { port: `b${i}`, end: ends[1].id } };
    return oneRunProject([from, to], ends, hose, run);
  });
  const first = all[0]!.project;
  return {
    project: { ...first, ports: all.flatMap((p) => p.project.ports), runs: all.flatMap((p) => p.project.runs) },
    runs: all.flatMap((p) => p.runs),
  };
}
