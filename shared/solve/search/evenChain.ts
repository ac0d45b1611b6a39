import { addScaled, distance, type Vec3 } from '../../base/vec3.ts';
import type { ArcLinePath, Pose } from '../../geometry/arcLinePath.ts';
import { chainLengthMm, chainPath } from './cornerChain.ts';

/**
 * A chain of corners with even edges, each corner rounded from the middle of one edge to the middle of the next. The first and the last
 * point are the places of the ends, the second and the last but one lie half an edge from them on their axes: only those
 * between are free.
 */
export type EvenChain = readonly Vec3[];

/** Places on the rounding of one corner when a chain is measured along. */
const ROUNDING_SHARES = [0.25, 0.5, 0.75, 1] as const;
/** No corner is rounded wider than a thousand times its tangent. */
const LEAST_HALF_TURN = 1e-3;

/** A line of places between two poses as an even chain with edges of about `wantedMm`. */
export function evenChainAlong(start: Pose, goal: Pose, line: readonly Vec3[], wantedMm: number): Vec3[] {
  return evenedChain(start, goal, corners(start, goal, line, wantedMm), wantedMm);
}

/** The same curve with its corners set evenly again, edges about `wantedMm` long. */
export function evenedChain(start: Pose, goal: Pose, chain: EvenChain, wantedMm: number): Vec3[] {
  const on = corners(start, goal, roundedLine(chain), wantedMm);
  // A rounding runs inside its corner by an eighth of the second difference: corners set that far out keep the curve.
  return on.map((q, i) => {
    if (i < 2 || i > on.length - 3) return q;
    const [p, r] = [on[i - 1] as Vec3, on[i + 1] as Vec3];
    return [outwards(p[0], q[0], r[0]), outwards(p[1], q[1], r[1]), outwards(p[2], q[2], r[2])];
  });
}

function outwards(p: number, q: number, r: number): number {
  return q - (p - 2 * q + r) / 8;
}

/** Length of the edges of a chain, the half ones at its ends counted as one. */
export function edgeMm(chain: EvenChain): number {
  return lengthOf(chain) / (chain.length - 2);
}

function lengthOf(line: readonly Vec3[]): number {
  let total = 0;
  for (let i = 1; i < line.length; i++) total += distance(line[i - 1] as Vec3, line[i] as Vec3);
  return total;
}

function corners(start: Pose, goal: Pose, line: readonly Vec3[], wantedMm: number): Vec3[] {
  const total = lengthOf(line);
  const count = Math.max(4, Math.round(total / wantedMm));
  const edge = total / count;
  const points: Vec3[] = [start.point, addScaled(start.point, start.direction, edge / 2)];
  let passed = 0;
  let at = 1;
  for (let i = 1; i < count - 1; i++) {
    const wanted = (i + 0.5) * edge;
    let step = distance(line[at - 1] as Vec3, line[at] as Vec3);
    while (passed + step < wanted && at < line.length - 1) {
      passed += step;
      at++;
      step = distance(line[at - 1] as Vec3, line[at] as Vec3);
    }
    points.push(between(line[at - 1] as Vec3, line[at] as Vec3, step > 0 ? (wanted - passed) / step : 0));
  }
  points.push(addScaled(goal.point, goal.direction, -edge / 2), goal.point);
  return points;
}

function between(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

/** Places along the rounded chain, close enough together to measure it. */
function roundedLine(chain: EvenChain): Vec3[] {
  const last = chain.length - 2;
  const line: Vec3[] = [chain[0] as Vec3];
  for (let i = 1; i <= last; i++) {
    const corner = chain[i] as Vec3;
    const from = between(chain[i - 1] as Vec3, corner, i === 1 ? 0 : 0.5);
    const to = between(corner, chain[i + 1] as Vec3, i === last ? 1 : 0.5);
    for (const t of ROUNDING_SHARES) line.push(between(between(from, corner, t), between(corner, to, t), t));
  }
  return line;
}

/** The chain with every corner rounded as widely as its edges allow; undefined where that is tighter than the limit. */
export function pathOfEvenChain(chain: EvenChain, start: Pose, radiusMm: number): ArcLinePath | undefined {
  const radii = chain.map((_, i) => (i === 0 || i === chain.length - 1 ? 0 : roundingRadiusMm(chain, i)));
  if (radii.slice(1, -1).some((radius) => radius < radiusMm)) return undefined;
  const rounded = { points: chain, radii };
  if (chainLengthMm(rounded) === undefined) return undefined;
  return { ...chainPath(rounded), start };
}

/** The largest radius that rounds a corner within half of each edge (all of a half edge at the ends), up to a thousand spacings. */
function roundingRadiusMm(chain: EvenChain, i: number): number {
  const [p, q, r] = [chain[i - 1] as Vec3, chain[i] as Vec3, chain[i + 1] as Vec3];
  const before = distance(p, q);
  const after = distance(q, r);
  const tangent = Math.min(before / (i === 1 ? 1 : 2), after / (i === chain.length - 2 ? 1 : 2));
  let cosine = 0;
  for (let d = 0; d < 3; d++) cosine += ((q[d] as number) - (p[d] as number)) * ((r[d] as number) - (q[d] as number));
  const turn = Math.acos(Math.max(-1, Math.min(1, cosine / (before * after))));
  return tangent / Math.max(Math.tan(turn / 2), LEAST_HALF_TURN);
}
