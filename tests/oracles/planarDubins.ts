const TURN = 2 * Math.PI;

function wrapped(angle: number): number {
  return angle - TURN * Math.floor(angle / TURN);
}

export interface DubinsWord {
  readonly lengthMm: number;
  readonly firstRad: number;
  readonly lastRad: number;
}

/**
 * Shortest curve of bounded curvature in the plane from the origin, heading +x, to (x, y), heading `heading`: the best of Dubins' words
 * (L. E. Dubins 1957; formulas after Shkel and Lumelsky 2001): LSL, RSR, LSR and RSL, and with `withThreeArcs` RLR and LRL too.
 */
export function planarDubins(x: number, y: number, heading: number, radius: number, withThreeArcs = false): DubinsWord {
  const d = Math.hypot(x, y) / radius;
  const a = wrapped(-Math.atan2(y, x));
  const b = wrapped(heading - Math.atan2(y, x));
  const words = [sameTurns(d, a, b, 1), sameTurns(d, a, b, -1), crossedTurns(d, a, b, 1), crossedTurns(d, a, b, -1)];
  if (withThreeArcs) words.push(threeArcs(d, a, b), threeArcs(d, wrapped(-a), wrapped(-b)));
  const [first, middle, last] = words
    .filter((word) => word !== undefined)
    .reduce((best, word) => (total(word) < total(best) ? word : best));
  return { lengthMm: radius * (first + middle + last), firstRad: first, lastRad: last };
}

type Word = readonly [first: number, middle: number, last: number];

function total([first, middle, last]: Word): number {
  return first + middle + last;
}

function sameTurns(d: number, a: number, b: number, sign: 1 | -1): Word | undefined {
  const across = d + sign * (Math.sin(a) - Math.sin(b));
  const squared = 2 + d * d - 2 * Math.cos(a - b) + 2 * d * sign * (Math.sin(a) - Math.sin(b));
  if (squared < 0) return undefined;
  const t = Math.atan2(sign * (Math.cos(b) - Math.cos(a)), across);
  return [wrapped(sign * (t - a)), Math.sqrt(squared), wrapped(sign * (b - t))];
}

function crossedTurns(d: number, a: number, b: number, sign: 1 | -1): Word | undefined {
  const across = d + sign * (Math.sin(a) + Math.sin(b));
  const squared = d * d - 2 + 2 * Math.cos(a - b) + 2 * d * sign * (Math.sin(a) + Math.sin(b));
  if (squared < 0) return undefined;
  const p = Math.sqrt(squared);
  const t = Math.atan2(-sign * (Math.cos(a) + Math.cos(b)), across) - Math.atan2(-2 * sign, p);
  return [wrapped(sign * (t - a)), p, wrapped(sign * (t - b))];
}

/** RLR; of the mirrored angles it is LRL. */
function threeArcs(d: number, a: number, b: number): Word | undefined {
  const cosine = (6 - d * d + 2 * Math.cos(a - b) + 2 * d * (Math.sin(a) - Math.sin(b))) / 8;
  if (Math.abs(cosine) > 1) return undefined;
  const p = TURN - Math.acos(cosine);
  const t = wrapped(a - Math.atan2(Math.cos(a) - Math.cos(b), d - Math.sin(a) + Math.sin(b)) + p / 2);
  return [t, p, wrapped(a - b - t + p)];
}
