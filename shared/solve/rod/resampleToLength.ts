import { addScaled, anySquareTo, dot, length, rejectFrom, scale, sub, unit, type Vec3 } from '../../base/vec3.ts';

/** Deviation from the chord, against its length, under which a polyline counts as straight. */
const STRAIGHT_DEVIATION = 0.02;

/** Halvings when fitting the length: a guess need not be nearer than 2^-24 of its range. */
const FIT_STEPS = 24;

/** Growth of the trial range until it holds the wanted length. */
const MAX_DOUBLINGS = 40;

function at(points: Float64Array, k: number): Vec3 {
  return [points[3 * k]!, points[3 * k + 1]!, points[3 * k + 2]!];
}

function lengthOf(points: Float64Array): number {
  let sum = 0;
  for (let i = 3; i + 2 < points.length; i += 3) {
    sum += Math.hypot(points[i]! - points[i - 3]!, points[i + 1]! - points[i - 2]!, points[i + 2]! - points[i - 1]!);
  }
  return sum;
}

/** `edges + 1` points at equal distances along the polyline. */
function equalSteps(points: Float64Array, edges: number): Float64Array {
  const total = lengthOf(points);
  const last = points.length / 3 - 1;
  const out = new Float64Array(3 * edges + 3);
  let segment = 0;
  let before = 0;
  let here = Math.hypot(...sub(at(points, 1), at(points, 0)));
  for (let k = 0; k <= edges; k++) {
    const wanted = (total * k) / edges;
    while (segment < last - 1 && before + here < wanted) {
      before += here;
      segment++;
      here = Math.hypot(...sub(at(points, segment + 1), at(points, segment)));
    }
    const t = here > 0 ? Math.min(1, Math.max(0, (wanted - before) / here)) : 0;
    const p = addScaled(at(points, segment), sub(at(points, segment + 1), at(points, segment)), t);
    out.set(p, 3 * k);
  }
  return out;
}

/** Each point less the point of the chord at the same fraction, and the largest of these. */
function deviations(points: Float64Array, edges: number): { each: Float64Array; largest: Vec3 } {
  const each = new Float64Array(points.length);
  const start = at(points, 0);
  const chord = sub(at(points, edges), start);
  let largest: Vec3 = [0, 0, 0];
  for (let k = 0; k <= edges; k++) {
    const d = sub(at(points, k), addScaled(start, chord, k / edges));
    each.set(d, 3 * k);
    if (length(d) > length(largest)) largest = d;
  }
  return { each, largest };
}

/** Gravity's part square to the chord, or a fixed square direction where there is none. */
function sideOf(chord: Vec3, towards: Vec3): Vec3 {
  const span = length(chord);
  const along: Vec3 = span > 0 ? scale(chord, 1 / span) : [1, 0, 0];
  const side = rejectFrom(towards, along);
  // Nearly along the chord is as good as along it: the side would be rounding.
  return dot(side, side) > 1e-4 ? unit(side) : anySquareTo(along);
}

/**
 * A polyline brought to about a wanted length between the same end points, as a shape to start a rod from.
 * @param points x, y, z of two points or more, mm
 * @param lengthMm wanted length; if it is below the distance of the ends, the straight chord is the answer
 * @param edges number of equal steps of the answer ((edges + 1) * 3 numbers)
 * @param towards where a straight line buckles to: usually the unit vector of gravity
 * A curved polyline keeps its shape, its deviation from the chord made larger or smaller as a whole; to a straight one
 * the first mode of a clamped column, (1 - cos 2 pi s) / 2, is added sideways. The sum of the chords is then the
 * wanted length to about 1e-6, and neighbouring steps differ little in length.
 */
export function resampleToLength(points: Float64Array, lengthMm: number, edges: number, towards: Vec3): Float64Array {
  const even = equalSteps(points, edges);
  const start = at(even, 0);
  const chord = sub(at(even, edges), start);
  const { each, largest } = deviations(even, edges);
  const curved = length(largest) > STRAIGHT_DEVIATION * lengthMm;
  const side = curved ? ([0, 0, 0] as Vec3) : scale(sideOf(chord, towards), lengthMm);
  const out = new Float64Array(even.length);
  const shaped = (grown: number): number => {
    for (let k = 0; k <= edges; k++) {
      const bump = (grown * (1 - Math.cos((2 * Math.PI * k) / edges))) / 2;
      const own = curved ? grown : 1;
      for (let i = 0; i < 3; i++) {
        out[3 * k + i] = start[i]! + (chord[i]! * k) / edges + own * each[3 * k + i]! + bump * side[i]!;
      }
    }
    return lengthOf(out);
  };
  let low = 0;
  let high = curved ? 1 : 0.01;
  for (let i = 0; i < MAX_DOUBLINGS && shaped(high) < lengthMm; i++) {
    low = high;
    high *= 2;
  }
  for (let i = 0; i < FIT_STEPS; i++) {
    const middle = (low + high) / 2;
    if (shaped(middle) < lengthMm) low = middle;
    else high = middle;
  }
  shaped(high);
  return equalSteps(out, edges);
}
