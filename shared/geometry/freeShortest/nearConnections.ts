import { ROUNDING_MM, ROUNDING_RAD } from '../../base/tolerances.ts';
import {
  add,
  addScaled,
  anySquareTo,
  cross,
  distance,
  dot,
  length,
  lengthOf,
  rejectFrom,
  scale,
  sub,
  unit,
  type Vec3,
} from '../../base/vec3.ts';
import {
  type ArcLinePath,
  type PathSegment,
  type Pose,
  pathLengthMm,
  poseAlongSegment,
  poseOnPath,
  segmentLengthMm,
  tidiedPath,
} from '../arcLinePath.ts';
import { chainStarts } from './chainStarts.ts';
import { redivideChain } from './redivideChain.ts';
import { ChainTightener } from './tightenChain.ts';
import { type ChainGoal, JOINT, layChain, type TurnChain } from './turnChain.ts';

/** Arcs of the chains that look for minima, and of those that are handed out. */
const ROUGH_ARCS = 12;
const FINE_ARCS = 24;
const ROUGH_STEPS = 30;
const FINE_STEPS = 60;
const LEAST_GAIN = 1e-6;
/** Radii and rad; a rough chain that is further from its goal is given up. */
const ROUGH_MISS = 1e-2;
/** Radii and rad; what a handed-out chain may miss: far under SAME_POINT_MM for any hose. */
const FINE_MISS = 1e-9;
/** Radii; rough chains that pass a third and two thirds of their lengths nearer to each other than this are one minimum. */
const SAME_PLACE = 0.3;
/** Of the minima so many of the shortest are made fine, and none that is longer than the shortest by more than this factor. */
const MOST_MINIMA = 4;
const LONGEST_MINIMUM = 1.6;

/** The right-handed frame at the start in which chains are laid: along the hose, the side the goal lies on, square to both. */
interface StartFrame {
  readonly along: Vec3;
  readonly side: Vec3;
  readonly square: Vec3;
}

/**
 * Short curves from one pose to another with no curvature above 1 / `radiusMm`, shortest first: chains of up to `FINE_ARCS` arcs of
 * at least that radius, each a local minimum of length. For poses that no arc-straight-arc connection with turns under pi joins (most
 * nearer than 2.5 radii): there the shortest curves are helicoidal arcs, or arc-straight-arc with a turn over pi (Sussmann 1995,
 * "Shortest 3-dimensional paths with a prescribed curvature bound"). Method: direct optimisation of rough chains from ten
 * starts, then of finer ones whose arcs are short where the plane turns fast. Empty when no start reaches the goal. The first
 * is within 0.3 % of the shortest known curve (200 seeded pairs against `tests/oracles/shortestExtremal`); 3 to 10 ms.
 */
export function nearConnections(from: Pose, to: Pose, radiusMm: number): ArcLinePath[] {
  const frame = frameAt(from, to);
  const goal = goalIn(frame, from, to, radiusMm);
  const paths: ArcLinePath[] = [];
  for (const rough of roughMinima(goal)) {
    const chain = refined(rough, goal);
    if (chain) paths.push(pathOf(chain, frame, from, radiusMm));
  }
  return distinctPaths(paths, SAME_PLACE * radiusMm);
}

/** Shortest first, without those that pass a third and two thirds of their lengths where a shorter one does. */
function distinctPaths(paths: readonly ArcLinePath[], samePlaceMm: number): ArcLinePath[] {
  const marked = paths.map((path) => {
    const lengthMm = pathLengthMm(path);
    return { path, lengthMm, marks: [1, 2].map((k) => poseOnPath(path, (k * lengthMm) / 3).point) };
  });
  marked.sort((a, b) => a.lengthMm - b.lengthMm);
  const kept: typeof marked = [];
  for (const one of marked) if (!kept.some(({ marks }) => isNear(marks, one.marks, samePlaceMm))) kept.push(one);
  return kept.map(({ path }) => path);
}

function isNear(marks: readonly Vec3[], others: readonly Vec3[], within: number): boolean {
  return marks.every((mark, i) => distance(mark, others[i] as Vec3) < within);
}

/** About how long the shortest of `nearConnections` is, mm; undefined where this quick look finds none. A tenth of its cost. */
export function nearLengthMm(from: Pose, to: Pose, radiusMm: number): number | undefined {
  const goal = goalIn(frameAt(from, to), from, to, radiusMm);
  const tightener = new ChainTightener(ROUGH_ARCS);
  const [start] = chainStarts(ROUGH_ARCS, length(goal.point));
  const { chain, miss } = tightener.tighten(start as TurnChain, goal, ROUGH_STEPS / 2, LEAST_GAIN);
  return miss < ROUGH_MISS ? chain.length * radiusMm : undefined;
}

function roughMinima(goal: ChainGoal): TurnChain[] {
  const tightener = new ChainTightener(ROUGH_ARCS);
  const found: TurnChain[] = [];
  for (const start of chainStarts(ROUGH_ARCS, length(goal.point))) {
    const { chain, miss } = tightener.tighten(start, goal, ROUGH_STEPS, LEAST_GAIN);
    if (miss < ROUGH_MISS) found.push(chain);
  }
  found.sort((a, b) => a.length - b.length);
  const longest = LONGEST_MINIMUM * (found[0]?.length ?? 0);
  const minima: { chain: TurnChain; marks: Vec3[] }[] = [];
  for (const chain of found) {
    if (chain.length > longest || minima.length === MOST_MINIMA) break;
    const marks = marksOn(chain);
    if (!minima.some((known) => isNear(known.marks, marks, SAME_PLACE))) minima.push({ chain, marks });
  }
  return minima.map(({ chain }) => chain);
}

/** Points at a third and at two thirds of a rough chain: they tell one minimum from another. */
function marksOn(chain: TurnChain): Vec3[] {
  const joints = new Float64Array(JOINT * (ROUGH_ARCS + 1));
  layChain(chain, joints);
  return [ROUGH_ARCS / 3, (2 * ROUGH_ARCS) / 3].map((i): Vec3 => {
    const [x, y, z] = joints.subarray(JOINT * i, JOINT * i + 3);
    return [x as number, y as number, z as number];
  });
}

function refined(rough: TurnChain, goal: ChainGoal): TurnChain | undefined {
  const tightener = new ChainTightener(FINE_ARCS);
  const once = tightener.tighten(redivideChain(rough, FINE_ARCS), goal, FINE_STEPS / 2, LEAST_GAIN);
  const twice = tightener.tighten(redivideChain(once.chain, FINE_ARCS), goal, FINE_STEPS, LEAST_GAIN);
  for (const { chain } of once.chain.length < twice.chain.length ? [once, twice] : [twice, once]) {
    const closed = tightener.close(chain, goal);
    if (closed.miss < FINE_MISS) return closed.chain;
  }
  return undefined;
}

function frameAt(from: Pose, to: Pose): StartFrame {
  const along = from.direction;
  const aside = rejectFrom(sub(to.point, from.point), along);
  const side = length(aside) > ROUNDING_MM ? unit(rejectFrom(unit(aside), along)) : anySquareTo(along);
  return { along, side, square: cross(along, side) };
}

function goalIn({ along, side, square }: StartFrame, from: Pose, to: Pose, radiusMm: number): ChainGoal {
  const seen = (v: Vec3): Vec3 => [dot(v, along), dot(v, side), dot(v, square)];
  return { point: scale(seen(sub(to.point, from.point)), 1 / radiusMm), direction: seen(to.direction) };
}

function pathOf(chain: TurnChain, { along, side, square }: StartFrame, from: Pose, radiusMm: number): ArcLinePath {
  const { bends, shares, length: total } = chain;
  const joints = new Float64Array(JOINT * (shares.length + 1));
  layChain(chain, joints);
  const inBay = (o: number): Vec3 => {
    const [x, y, z] = joints.subarray(o, o + 3);
    return add(addScaled(scale(along, x as number), side, y as number), scale(square, z as number));
  };
  const segments: PathSegment[] = [];
  let pose = from;
  for (let i = 0; i < shares.length; i++) {
    const [a, b] = [bends[2 * i] as number, bends[2 * i + 1] as number];
    const lengthMm = (shares[i] as number) * total * radiusMm;
    const curvature = Math.min(1, lengthOf(a, b)) / radiusMm;
    const towards = addScaled(scale(inBay(JOINT * i + 6), a), inBay(JOINT * i + 9), b);
    const segment: PathSegment =
      curvature * lengthMm < ROUNDING_RAD
        ? { kind: 'line', lengthMm }
        : {
            kind: 'arc',
            radiusMm: Math.max(radiusMm, 1 / curvature),
            angleRad: curvature * lengthMm,
            normal: unit(rejectFrom(towards, pose.direction)),
          };
    segments.push(segment);
    pose = poseAlongSegment(pose, segment, segmentLengthMm(segment));
  }
  return tidiedPath({ start: from, segments });
}
