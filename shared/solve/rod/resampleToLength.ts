import { anySquareTo, dot, length, lengthOf, rejectFrom, scale, unit, type Vec3 } from '../../base/vec3.ts';

/** Deviation from the chord, against its length, under which a polyline counts as straight. */
const STRAIGHT_DEVIATION = 0.02;

/** Relative. A guess need not have its length more exactly than this. */
const LENGTH_FIT = 1e-7;

/** Newton steps for the length; it is convex, so from above they fall to it without overshooting. */
const FIT_STEPS = 30;

/** Growth of the trial until it is long enough. */
const MAX_DOUBLINGS = 40;

/** Square of a sine: gravity nearer to the chord than this gives no side to buckle to, only rounding. */
const NEARLY_ALONG = 1e-4;

function chordOf(points: Float64Array, from: number, to: number): number {
  return lengthOf(
    points[3 * to]! - points[3 * from]!,
    points[3 * to + 1]! - points[3 * from + 1]!,
    points[3 * to + 2]! - points[3 * from + 2]!,
  );
}

/** `edges + 1` points at equal distances along the polyline. */
function equalSteps(points: Float64Array, edges: number): Float64Array {
  const last = points.length / 3 - 1;
  let total = 0;
  for (let i = 0; i < last; i++) total += chordOf(points, i, i + 1);
  const out = new Float64Array(3 * edges + 3);
  let segment = 0;
  let before = 0;
  let here = chordOf(points, 0, 1);
  for (let k = 0; k <= edges; k++) {
    const wanted = (total * k) / edges;
    while (segment < last - 1 && before + here < wanted) {
      before += here;
      segment++;
      here = chordOf(points, segment, segment + 1);
    }
    const t = here > 0 ? Math.min(1, Math.max(0, (wanted - before) / here)) : 0;
    for (let i = 0; i < 3; i++) {
      const from = points[3 * segment + i]!;
      out[3 * k + i] = from + t * (points[3 * segment + 3 + i]! - from);
    }
  }
  return out;
}

/** Gravity's part square to the chord, or a fixed square direction where there is none. */
function sideOf(chord: Vec3, towards: Vec3): Vec3 {
  const span = length(chord);
  const along: Vec3 = span > 0 ? scale(chord, 1 / span) : [1, 0, 0];
  const side = rejectFrom(towards, along);
  return dot(side, side) > NEARLY_ALONG ? unit(side) : anySquareTo(along);
}

/** A family of polylines, `base + grown * growth`, of N + 1 points each. */
interface Family {
  readonly base: Float64Array;
  readonly growth: Float64Array;
  readonly curved: boolean;
}

/**
 * For a curved polyline: its chord, and its own deviation from it as growth. For a straight one: itself, and the first
 * mode of a clamped column, (1 - cos 2 pi s) / 2, sideways.
 */
function familyOf(even: Float64Array, edges: number, lengthMm: number, towards: Vec3): Family {
  const base = new Float64Array(even.length);
  const growth = new Float64Array(even.length);
  const end = 3 * edges;
  let widest = 0;
  for (let k = 0; k <= edges; k++) {
    for (let i = 0; i < 3; i++) {
      base[3 * k + i] = even[i]! + ((even[end + i]! - even[i]!) * k) / edges;
      growth[3 * k + i] = even[3 * k + i]! - base[3 * k + i]!;
    }
    widest = Math.max(widest, lengthOf(growth[3 * k]!, growth[3 * k + 1]!, growth[3 * k + 2]!));
  }
  if (widest > STRAIGHT_DEVIATION * lengthMm) return { base, growth, curved: true };
  const side = sideOf([even[end]! - even[0]!, even[end + 1]! - even[1]!, even[end + 2]! - even[2]!], towards);
  for (let k = 0; k <= edges; k++) {
    const bump = ((1 - Math.cos((2 * Math.PI * k) / edges)) / 2) * lengthMm;
    for (let i = 0; i < 3; i++) growth[3 * k + i] = bump * side[i]!;
  }
  return { base: even, growth, curved: false };
}

/** Length of a member of the family and its derivative by `grown`. */
function measure({ base, growth }: Family, grown: number): { lengthMm: number; slope: number } {
  let lengthMm = 0;
  let slope = 0;
  for (let i = 3; i < base.length; i += 3) {
    const vx = growth[i]! - growth[i - 3]!;
    const vy = growth[i + 1]! - growth[i - 2]!;
    const vz = growth[i + 2]! - growth[i - 1]!;
    const x = base[i]! - base[i - 3]! + grown * vx;
    const y = base[i + 1]! - base[i - 2]! + grown * vy;
    const z = base[i + 2]! - base[i - 1]! + grown * vz;
    const step = Math.sqrt(x * x + y * y + z * z);
    lengthMm += step;
    if (step > 0) slope += (x * vx + y * vy + z * vz) / step;
  }
  return { lengthMm, slope };
}

/** How far to grow for the wanted length; 0 where the ungrown member is already longer. */
function grownTo(family: Family, lengthMm: number): number {
  if (measure(family, 0).lengthMm >= lengthMm) return 0;
  let grown = family.curved ? 1 : 0.01;
  for (let i = 0; i < MAX_DOUBLINGS && measure(family, grown).lengthMm < lengthMm; i++) grown *= 2;
  for (let i = 0; i < FIT_STEPS; i++) {
    const now = measure(family, grown);
    if (now.lengthMm - lengthMm <= LENGTH_FIT * lengthMm || now.slope <= 0) break;
    grown -= (now.lengthMm - lengthMm) / now.slope;
  }
  return grown;
}

/**
 * A polyline brought to about a wanted length between the same end points, as a shape to start a rod from.
 * @param points x, y, z of two points or more, mm
 * @param lengthMm wanted length; if it is below the distance of the ends, the straight chord is the answer
 * @param edges number of equal steps of the answer ((edges + 1) * 3 numbers)
 * @param towards where a straight line buckles to: usually the unit vector of gravity
 * A curved polyline keeps its shape, its deviation from the chord made larger or smaller as a whole; a straight one is
 * bulged sideways smoothly. The chords of the answer are equal where it is smooth, and their sum is the wanted length
 * less what the corners cut by the last resampling had: a few parts in a thousand for 32 edges, less for more.
 */
export function resampleToLength(points: Float64Array, lengthMm: number, edges: number, towards: Vec3): Float64Array {
  const even = equalSteps(points, edges);
  const family = familyOf(even, edges, lengthMm, towards);
  const grown = grownTo(family, lengthMm);
  const { base, growth } = family;
  const out = new Float64Array(even.length);
  for (let i = 0; i < out.length; i++) out[i] = base[i]! + grown * growth[i]!;
  return equalSteps(out, edges);
}
