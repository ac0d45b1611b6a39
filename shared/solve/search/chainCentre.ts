import { anySquareTo, cross, distance, dot, length, lengthOf, type Vec3 } from '../../base/vec3.ts';
import type { BandedLeastSquares } from './bandedLeastSquares.ts';
import { type ClearSpace, marginAt } from './clearSpace.ts';
import { type EvenChain, edgeMm } from './evenChain.ts';

/** mm. Margins wider than what is aimed at by this push no more; below what is known of a field's coarse bounds. */
const MARGIN_REACH_MM = 2.4;
/** Bends gentler than the limit by this share resist no more. */
const BEND_REACH = 0.3;
/** What edges uneven by their own length count for. */
const EVEN = 1000;
/** Settles what nothing else does: straight rather than bent. */
const SMOOTH = 1e-4;
/** mm. For the slope of a margin: short, since margins have creases where the nearest surface changes. */
const SLOPE_STEP_MM = 0.05;
/** Half spaces kept at one place, from how far away, and how alike two are of which only the newer is kept. */
const PLANES = 8;
const PLANE_REACH_MM = 3;
const ALIKE_COSINE = 0.99;

/** What is asked of a chain, as far as it is relaxed for the time being. */
export interface Asked {
  /** the sharpest bend allowed, 1 / mm */
  readonly mostBend: number;
  /** share by which bends may be sharper for now */
  readonly bendSlack: number;
  /** mm. The margin wanted, and how much of it may be short for now. */
  readonly aimedMm: number;
  readonly marginSlackMm: number;
}

/** Where a margin was asked: beyond it the margin is taken as linear, which errs on the safe side beside anything round or pointed. */
interface Plane {
  readonly at: Vec3;
  readonly marginMm: number;
  readonly slope: Vec3;
}

/** A place on the rounded chain, by its weights on corner `corner` and the two beside. */
interface Place {
  readonly corner: number;
  readonly weights: Vec3;
  planes: Plane[];
}

/** Where the rounding of a corner is nearest to it, and where it ends: in the middle of the edge. */
const MIDDLE_OF_ROUNDING: Vec3 = [1 / 8, 3 / 4, 1 / 8];
const MIDDLE_OF_EDGE: Vec3 = [0, 1 / 2, 1 / 2];

/** How far a chain is from all that is asked: logarithmic barriers over margins and bends, with what is known of the margins near it. */
export class ChainCentre {
  private readonly space: ClearSpace;
  private readonly places: Place[] = [];
  private readonly edgeMm: number;
  private readonly gradient = new Float64Array(9);

  constructor(space: ClearSpace, chain: EvenChain) {
    this.space = space;
    this.edgeMm = edgeMm(chain);
    const last = chain.length - 2;
    for (let corner = 1; corner < last; corner++) {
      if (corner > 1) this.places.push({ corner, weights: MIDDLE_OF_ROUNDING, planes: [] });
      this.places.push({ corner, weights: MIDDLE_OF_EDGE, planes: [] });
    }
  }

  /** Margins at the places looked at, mm. */
  margins(chain: EvenChain): number[] {
    const margins: number[] = [];
    for (const place of this.places) margins.push(this.marginMm(placeOn(chain, place)));
    return margins;
  }

  /** Where the margin is least. */
  worstPlace(chain: EvenChain, margins: readonly number[]): Vec3 {
    return placeOn(chain, this.places[margins.indexOf(Math.min(...margins))] as Place);
  }

  /** Learns the slopes of the margins there, where they are below `belowMm`. */
  learn(chain: EvenChain, margins: readonly number[], belowMm: number): void {
    for (const [i, place] of this.places.entries()) {
      const marginMm = margins[i] as number;
      if (marginMm >= belowMm) continue;
      const at = placeOn(chain, place);
      const slope = this.slopeAt(at);
      const other = (p: Plane): boolean =>
        distance(p.at, at) < PLANE_REACH_MM && dot(p.slope, slope) < ALIKE_COSINE * length(p.slope) * length(slope);
      place.planes = [...place.planes.filter(other).slice(1 - PLANES), { at, marginMm, slope }];
    }
  }

  /** Forgets all planes: where what was learnt elsewhere says too much. */
  forget(): void {
    for (const place of this.places) place.planes = [];
  }

  /** Margins above this are not looked at, mm. */
  static reachMm(aimedMm: number): number {
    return aimedMm + MARGIN_REACH_MM;
  }

  /** The sum of the barriers, infinite where one is crossed. With a system, its quadratic model is put into that. */
  merit(chain: EvenChain, asked: Asked, system?: BandedLeastSquares): number {
    system?.clear();
    let cost = 0;
    for (const place of this.places) cost += this.marginBarriers(place, chain, asked, system);
    for (let i = 1; i < chain.length - 1 && cost < Number.POSITIVE_INFINITY; i++)
      cost += this.cornerTerms(chain, i, asked, system);
    return cost;
  }

  private marginMm([x, y, z]: Vec3): number {
    return marginAt(this.space, x, y, z);
  }

  private slopeAt([x, y, z]: Vec3): Vec3 {
    const s = SLOPE_STEP_MM;
    const of = (a: number, b: number, c: number): number =>
      (this.marginMm([x + a, y + b, z + c]) - this.marginMm([x - a, y - b, z - c])) / (2 * s);
    return [of(s, 0, 0), of(0, s, 0), of(0, 0, s)];
  }

  private marginBarriers(place: Place, chain: EvenChain, asked: Asked, system?: BandedLeastSquares): number {
    if (place.planes.length === 0) return 0;
    const at = placeOn(chain, place);
    const reach = MARGIN_REACH_MM + asked.marginSlackMm;
    let cost = 0;
    for (const plane of place.planes) {
      const marginMm = plane.marginMm + dot(plane.slope, at) - dot(plane.slope, plane.at);
      const left = marginMm - asked.aimedMm + asked.marginSlackMm;
      cost += barrier(left, reach);
      if (system === undefined || left >= reach || left <= 0) continue;
      for (let n = 0; n < 9; n++)
        this.gradient[n] = (place.weights[Math.floor(n / 3)] as number) * (plane.slope[n % 3] as number);
      addBarrier(system, left, reach, 3 * (place.corner - 3), this.gradient);
    }
    return cost;
  }

  /** The bend at a corner, its edges' evenness, and the smoothness that settles what the others leave open. */
  private cornerTerms(chain: EvenChain, i: number, asked: Asked, system?: BandedLeastSquares): number {
    const bend = bendAt(chain, i);
    const reach = BEND_REACH + asked.bendSlack;
    const left = 1 - bend.size / asked.mostBend + asked.bendSlack;
    const uneven = (bend.b * bend.after - bend.a * bend.before) / this.edgeMm;
    const smooth = SMOOTH / asked.mostBend ** 2;
    if (system !== undefined && left > 0) {
      const first = 3 * (i - 3);
      if (left < reach) this.addBend(bend, left, reach, asked.mostBend, first, system);
      this.addSmooth(bend, smooth, first, system);
      this.addEven(bend, uneven, first, system);
    }
    return barrier(left, reach) + (smooth * bend.size ** 2) / 2 + (EVEN * uneven ** 2) / 2;
  }

  private addBend(
    bend: Bend,
    left: number,
    reach: number,
    mostBend: number,
    first: number,
    system: BandedLeastSquares,
  ): void {
    const { k, size, spacing, a, b, u, v } = bend;
    const along: Vec3 = size > 0 ? [k[0] / size, k[1] / size, k[2] / size] : [1, 0, 0];
    // Longer edges bend less by the same turn: d(spacing) comes in beside d(turn).
    const grown = size / spacing;
    const scale = 1 / (spacing * spacing);
    for (let d = 0; d < 3; d++) {
      const [bu, bv] = [a * (u[d] as number), b * (v[d] as number)];
      const [t, g] = [scale * (along[d] as number), grown];
      this.gradient[d] = -(a * t + g * bu) / mostBend;
      this.gradient[3 + d] = -((-a - b) * t - g * (bu - bv)) / mostBend;
      this.gradient[6 + d] = -(b * t - g * bv) / mostBend;
    }
    addBarrier(system, left, reach, first, this.gradient);
    if (!(size > 0)) return;
    // A bend also resists being turned aside: the curvature of its size square to itself.
    const aside = (1 / left - 1 / reach) / (mostBend * size);
    const side = anySquareTo(along);
    for (const axis of [side, cross(along, side)]) this.addAcross(bend, aside, 0, axis, first, system);
  }

  private addSmooth(bend: Bend, weight: number, first: number, system: BandedLeastSquares): void {
    for (let d = 0; d < 3; d++) {
      const axis: Vec3 = [d === 0 ? 1 : 0, d === 1 ? 1 : 0, d === 2 ? 1 : 0];
      this.addAcross(bend, weight, bend.k[d] as number, axis, first, system);
    }
  }

  /** A term on the part of the bend along an axis. */
  private addAcross(
    { a, b, spacing }: Bend,
    weight: number,
    residual: number,
    axis: Vec3,
    first: number,
    system: BandedLeastSquares,
  ): void {
    const scale = 1 / (spacing * spacing);
    for (let d = 0; d < 3; d++) {
      const c = scale * (axis[d] as number);
      this.gradient[d] = a * c;
      this.gradient[3 + d] = (-a - b) * c;
      this.gradient[6 + d] = b * c;
    }
    system.add(weight, residual, first, this.gradient);
  }

  private addEven({ a, b, u, v }: Bend, uneven: number, first: number, system: BandedLeastSquares): void {
    for (let d = 0; d < 3; d++) {
      const [bu, bv] = [(a * (u[d] as number)) / this.edgeMm, (b * (v[d] as number)) / this.edgeMm];
      this.gradient[d] = bu;
      this.gradient[3 + d] = -bu - bv;
      this.gradient[6 + d] = bv;
    }
    system.add(EVEN, uneven, first, this.gradient);
  }
}

/** -log of what is left over its reach, made flat at the reach, beyond which it is 0. */
function barrier(left: number, reach: number): number {
  if (left >= reach) return 0;
  return left > 0 ? -Math.log(left / reach) + left / reach - 1 : Number.POSITIVE_INFINITY;
}

/** Newton's model of a barrier whose `left` has the gradient given. */
function addBarrier(
  system: BandedLeastSquares,
  left: number,
  reach: number,
  first: number,
  gradient: Float64Array,
): void {
  system.add(1 / (left * left), left * (left / reach - 1), first, gradient);
}

function placeOn(chain: EvenChain, { corner, weights: [a, b, c] }: Place): Vec3 {
  const [p, q, r] = [chain[corner - 1] as Vec3, chain[corner] as Vec3, chain[corner + 1] as Vec3];
  return [a * p[0] + b * q[0] + c * r[0], a * p[1] + b * q[1] + c * r[1], a * p[2] + b * q[2] + c * r[2]];
}

/** The sharpest bend of a chain, 1 / mm, and its corner. */
export function sharpestBend(chain: EvenChain): { readonly size: number; readonly corner: number } {
  let sharpest = { size: -1, corner: 1 };
  for (let corner = 1; corner < chain.length - 1; corner++) {
    const { size } = bendAt(chain, corner);
    if (size > sharpest.size) sharpest = { size, corner };
  }
  return sharpest;
}

/** The corners at which the stretch round a corner begins and ends along which every bend is at least so sharp, 1 / mm. */
export function sharpStretch(chain: EvenChain, corner: number, leastBend: number): readonly [number, number] {
  const isSharp = (i: number): boolean => i > 0 && i < chain.length - 1 && bendAt(chain, i).size >= leastBend;
  let [first, last] = [corner, corner];
  while (isSharp(first - 1)) first--;
  while (isSharp(last + 1)) last++;
  return [first, last];
}

interface Bend {
  /** curvature as a vector, 1 / mm, and its size */
  readonly k: Vec3;
  readonly size: number;
  readonly spacing: number;
  /** edges, mm, and their directions */
  readonly before: number;
  readonly after: number;
  readonly u: Vec3;
  readonly v: Vec3;
  /** 2 for the half edge beside an end, which is rounded off whole; else 1 */
  readonly a: number;
  readonly b: number;
}

function bendAt(chain: EvenChain, i: number): Bend {
  const [p, q, r] = [chain[i - 1] as Vec3, chain[i] as Vec3, chain[i + 1] as Vec3];
  const before = Math.max(distance(p, q), Number.MIN_VALUE);
  const after = Math.max(distance(q, r), Number.MIN_VALUE);
  const a = i === 1 ? 2 : 1;
  const b = i === chain.length - 2 ? 2 : 1;
  const spacing = (a * before + b * after) / 2;
  const scale = 1 / (spacing * spacing);
  const [ux, uy, uz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
  const [vx, vy, vz] = [r[0] - q[0], r[1] - q[1], r[2] - q[2]];
  const k: Vec3 = [scale * (b * vx - a * ux), scale * (b * vy - a * uy), scale * (b * vz - a * uz)];
  const u: Vec3 = [ux / before, uy / before, uz / before];
  const v: Vec3 = [vx / after, vy / after, vz / after];
  return { k, size: lengthOf(k[0], k[1], k[2]), spacing, before, after, u, v, a, b };
}
