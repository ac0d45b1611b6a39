import { addScaled, anySquareTo, cross, distance, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { ArcLinePath, Pose } from '../../geometry/arcLinePath.ts';
import { BandedLeastSquares } from './bandedLeastSquares.ts';
import { type ClearSpace, isPathClear, marginAt } from './clearSpace.ts';
import { chainLengthMm, chainPath } from './cornerChain.ts';

/** Spacing of the corners over the least radius: their rounding then leaves the line by R / 800. */
const SPACING_RADII = 0.1;
/**
 * mm. The margin aimed at, round by round: much at first, which brings the line to the middle of a narrow place; at last what
 * rounding takes and a little, which leaves the bends all the room there is.
 */
const AIMED_MARGINS_MM = [5, 4, 3, 2, 1.2, 0.8, 0.5, 0.4];
/** Relative. How much below the limit the bends are aimed: spacing is not quite even. */
const BEND_IN_HAND = 0.004;
const STEPS_A_ROUND = 20;
/** mm. For the slope of the margin. */
const SLOPE_STEP_MM = 0.5;
/** Weights of the terms, all of them as lengths in mm. */
const WEIGHTS = { margin: 1, even: 2, first: 0.02, last: 1e-6 };
/** mm. What a bend as sharp as twice the limit counts for. */
const BEND_MM = 60;
const BEND_GROWTH = 1.4;
/** Blur of the hinge: of the first round, and from round to round; beyond so many blurs it counts as nothing. */
const BEND_BLUR = 0.03;
const BEND_BLUR_SHRINK = 0.7;
const BEND_BLUR_REACH = 6;
/** No corner moves further in one step, as a share of the spacing. */
const LONGEST_STEP = 0.5;
const FIRST_DAMPING = 1e-3;
const MOST_DAMPING = 1e8;
/** The next round starts from the damping of the last, up to this. */
const CARRIED_DAMPING = 10;

export interface Pushed {
  readonly path?: ArcLinePath;
  /** where it still fails worst, when it does */
  readonly worst: Vec3;
}

/**
 * Pushes a line of places between two poses into a clear way with bends of at least `radiusMm`: for places so narrow that no lattice
 * has a node in them. Method: the line as a chain of short, even edges; Gauss-Newton steps (Levenberg-Marquardt damping,
 * band solver) on the margins that are short, the bends that are too sharp, and a little smoothness. What comes out is
 * a chain of rounded corners and proven like any other way; it is local: a line on the wrong side of things stays there.
 */
export function pushClear(
  space: ClearSpace,
  start: Pose,
  goal: Pose,
  line: readonly Vec3[],
  radiusMm: number,
  watch: Watch,
): Pushed {
  let points = [...line];
  let worst = start.point;
  let damping = FIRST_DAMPING;
  for (const [round, aimedMm] of AIMED_MARGINS_MM.entries()) {
    stopIfCancelled(watch);
    points = evenly(start, goal, points, SPACING_RADII * radiusMm);
    if (points.length < 5) return { worst };
    const smooth = WEIGHTS.first * (WEIGHTS.last / WEIGHTS.first) ** (round / (AIMED_MARGINS_MM.length - 1));
    ({ points, damping } = relaxed(space, points, damping, {
      radiusMm,
      aimedMm,
      smooth,
      bendMm: BEND_MM * BEND_GROWTH ** round,
      blur: BEND_BLUR * BEND_BLUR_SHRINK ** round,
    }));
    if (round === 0) continue;
    const path = pathOver(points, start, radiusMm);
    if (path !== undefined && isPathClear(space, path)) return { path, worst };
    worst = worstOf(space, points, radiusMm);
  }
  return { worst };
}

/** The line as a chain of even edges; the first and the last corner lie half an edge from the ends, on their axes. */
function evenly(start: Pose, goal: Pose, line: readonly Vec3[], wantedMm: number): Vec3[] {
  const first = addScaled(start.point, start.direction, wantedMm / 2);
  const last = addScaled(goal.point, goal.direction, -wantedMm / 2);
  const all = [first, ...line.slice(1, -1), last];
  let total = 0;
  for (let i = 1; i < all.length; i++) total += distance(all[i - 1] as Vec3, all[i] as Vec3);
  const count = Math.max(2, Math.round(total / wantedMm));
  const points: Vec3[] = [start.point, first];
  let at = 0;
  let passed = 0;
  for (let i = 1; i < count; i++) {
    const wanted = (i * total) / count;
    let edge = distance(all[at] as Vec3, all[at + 1] as Vec3);
    while (passed + edge < wanted && at < all.length - 2) {
      passed += edge;
      at++;
      edge = distance(all[at] as Vec3, all[at + 1] as Vec3);
    }
    const t = edge > 0 ? (wanted - passed) / edge : 0;
    const [a, b] = [all[at] as Vec3, all[at + 1] as Vec3];
    points.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])]);
  }
  return [...points, last, goal.point];
}

interface Aims {
  readonly radiusMm: number;
  readonly aimedMm: number;
  /** weight of smoothness */
  readonly smooth: number;
  /** mm. What a bend as sharp as twice the limit counts for. */
  readonly bendMm: number;
  /** share of the limit over which the hinge of a bend is blurred */
  readonly blur: number;
}

/** Gauss-Newton steps over the free corners, all but two at either end. */
function relaxed(
  space: ClearSpace,
  from: readonly Vec3[],
  firstDamping: number,
  aims: Aims,
): { points: Vec3[]; damping: number } {
  let points = [...from];
  let damping = firstDamping;
  const free = points.length - 4;
  if (free < 1) return { points, damping };
  const system = new BandedLeastSquares(3 * free, 8);
  let cost = assemble(space, points, aims, system);
  for (let step = 0; step < STEPS_A_ROUND && damping < MOST_DAMPING; step++) {
    const move = system.solve(damping);
    const moved = move === undefined ? points : movedBy(points, move);
    const next = move === undefined ? cost : assemble(space, moved, aims);
    if (next < cost) {
      points = moved;
      damping = Math.max(FIRST_DAMPING * 1e-3, damping / 4);
      const gained = cost - next;
      cost = assemble(space, points, aims, system);
      if (gained < 1e-6 * cost) break;
    } else damping *= 6;
  }
  return { points, damping: Math.min(damping, CARRIED_DAMPING) };
}

function movedBy(points: readonly Vec3[], move: Float64Array): Vec3[] {
  const most = LONGEST_STEP * distance(points[1] as Vec3, points[2] as Vec3);
  return points.map((p, i) => {
    const at = 3 * (i - 2);
    if (at < 0 || at >= move.length) return p;
    const step: Vec3 = [move[at] as number, move[at + 1] as number, move[at + 2] as number];
    const size = Math.hypot(...step);
    return addScaled(p, step, size > most ? most / size : 1);
  });
}

/** The cost of a chain; with a system, its terms are put into that. */
function assemble(space: ClearSpace, points: readonly Vec3[], aims: Aims, system?: BandedLeastSquares): number {
  system?.clear();
  let cost = 0;
  const add = (weight: number, residual: number, nodes: readonly number[], gradients: readonly Vec3[]): void => {
    cost += (weight * residual * residual) / 2;
    const unknowns = nodes.flatMap((n) => [3 * (n - 2), 3 * (n - 2) + 1, 3 * (n - 2) + 2]);
    system?.add(weight, residual, unknowns, gradients.flat());
  };
  for (let i = 1; i < points.length - 1; i++) {
    const [p, q, r] = [points[i - 1] as Vec3, points[i] as Vec3, points[i + 1] as Vec3];
    if (i >= 2 && i < points.length - 2) marginTerm(space, q, i, aims.aimedMm, system !== undefined, add);
    bendTerms(p, q, r, i, points.length, aims, add);
  }
  return cost;
}

type Add = (weight: number, residual: number, nodes: readonly number[], gradients: readonly Vec3[]) => void;

function marginTerm(
  space: ClearSpace,
  [x, y, z]: Vec3,
  i: number,
  aimedMm: number,
  withSlope: boolean,
  add: Add,
): void {
  const margin = marginAt(space, x, y, z);
  if (margin >= aimedMm) return;
  if (!withSlope) {
    add(WEIGHTS.margin, margin - aimedMm, [i], [[0, 0, 0]]);
    return;
  }
  const slope = (a: number, b: number, c: number): number =>
    (marginAt(space, x + a, y + b, z + c) - marginAt(space, x - a, y - b, z - c)) / (2 * SLOPE_STEP_MM);
  const s = SLOPE_STEP_MM;
  add(WEIGHTS.margin, margin - aimedMm, [i], [[slope(s, 0, 0), slope(0, s, 0), slope(0, 0, s)]]);
}

/** Too sharp a bend, uneven edges, and the smoothness that settles what the others leave open. */
function bendTerms(
  p: Vec3,
  q: Vec3,
  r: Vec3,
  i: number,
  count: number,
  { radiusMm, smooth, bendMm, blur }: Aims,
  add: Add,
): void {
  const most = (1 - BEND_IN_HAND) / radiusMm;
  const before = distance(p, q);
  const after = distance(q, r);
  // Beside an end the half edge is rounded off whole: the spacing that counts is that of the full edge.
  const a = i === 1 ? 2 : 1;
  const b = i === count - 2 ? 2 : 1;
  const spacing = (a * before + b * after) / 2;
  const k: number[] = [0, 0, 0];
  const scale = 1 / (spacing * spacing);
  for (let d = 0; d < 3; d++)
    k[d] = scale * (b * ((r[d] as number) - (q[d] as number)) - a * ((q[d] as number) - (p[d] as number)));
  const size = Math.hypot(...k);
  const unitOf = bendMm * radiusMm;
  const nodes = [i - 1, i, i + 1];
  const excess = size / most - 1;
  if (size > 0 && excess > -BEND_BLUR_REACH * blur) {
    // A blurred hinge: a bend near the limit already resists, so that a step knows which bends it would overdo.
    const root = Math.hypot(excess, blur);
    const steepness = (1 + excess / root) / 2;
    const residual = ((excess + root) / 2) * most * unitOf;
    const direction = k.map((c) => c / size) as unknown as Vec3;
    const along = (axis: Vec3, factor: number): Vec3 => axis.map((c) => c * factor * scale) as unknown as Vec3;
    const put = (weight: number, value: number, axis: Vec3, slope: number): void =>
      add(weight, value, nodes, [along(axis, a * slope), along(axis, (-a - b) * slope), along(axis, b * slope)]);
    put(1, residual, direction, unitOf * steepness);
    // A bend past its limit also resists being turned aside: without this, steps go far too wide.
    const side = anySquareTo(direction);
    const aside = (residual * unitOf * steepness) / size;
    put(aside, 0, side, 1);
    put(aside, 0, cross(direction, side), 1);
  }
  for (let d = 0; d < 3; d++) {
    const axis = (factor: number): Vec3 => [0, 1, 2].map((e) => (e === d ? factor : 0)) as unknown as Vec3;
    const per = scale * BEND_MM * radiusMm;
    add(smooth, (k[d] as number) * BEND_MM * radiusMm, nodes, [axis(a * per), axis((-a - b) * per), axis(b * per)]);
  }
  if (before === 0 || after === 0) return;
  const towards = (from: Vec3, to: Vec3, mm: number): Vec3 => [
    (to[0] - from[0]) / mm,
    (to[1] - from[1]) / mm,
    (to[2] - from[2]) / mm,
  ];
  const u = towards(p, q, before);
  const v = towards(q, r, after);
  const back = u.map((c, d) => -a * c - b * (v[d] as number)) as unknown as Vec3;
  const along = (direction: Vec3, factor: number): Vec3 => direction.map((c) => factor * c) as unknown as Vec3;
  add(WEIGHTS.even, b * after - a * before, nodes, [along(u, a), back, along(v, b)]);
}

/** The chain with every corner rounded as widely as its edges allow; undefined where that is tighter than the limit. */
function pathOver(points: readonly Vec3[], start: Pose, radiusMm: number): ArcLinePath | undefined {
  const radii = points.map((_, i) => (i === 0 || i === points.length - 1 ? 0 : radiusAt(points, i)));
  if (radii.slice(1, -1).some((radius) => radius < radiusMm)) return undefined;
  const chain = { points, radii };
  if (chainLengthMm(chain) === undefined) return undefined;
  return { ...chainPath(chain), start };
}

/** The largest radius that rounds a corner within half of each edge (all of a half edge at the ends), up to a thousand spacings. */
function radiusAt(points: readonly Vec3[], i: number): number {
  const [p, q, r] = [points[i - 1] as Vec3, points[i] as Vec3, points[i + 1] as Vec3];
  const before = distance(p, q) / (i === 1 ? 1 : 2);
  const after = distance(q, r) / (i === points.length - 2 ? 1 : 2);
  const tangent = Math.min(before, after);
  const cosine = [0, 1, 2].reduce(
    (sum, d) => sum + ((q[d] as number) - (p[d] as number)) * ((r[d] as number) - (q[d] as number)),
    0,
  );
  const turn = Math.acos(Math.max(-1, Math.min(1, cosine / (distance(p, q) * distance(q, r)))));
  return tangent / Math.max(Math.tan(turn / 2), 1e-3);
}

function worstOf(space: ClearSpace, points: readonly Vec3[], radiusMm: number): Vec3 {
  let worst = points[0] as Vec3;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < points.length - 1; i++) {
    const p = points[i] as Vec3;
    const tight = (radiusMm / radiusAt(points, i) - 1) * BEND_MM;
    const near = -marginAt(space, p[0], p[1], p[2]);
    if (Math.max(tight, near) > most) [worst, most] = [p, Math.max(tight, near)];
  }
  return worst;
}
