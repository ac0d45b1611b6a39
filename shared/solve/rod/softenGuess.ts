import { anySquareTo, lengthOf, unit, type Vec3 } from '../../base/vec3.ts';
import type { RodWorkspace } from './rodState.ts';

/** Cosine of the sharpest bend a guess may keep: 60 degrees. Measured over 2000 cold starts; 90 and 37 are a little slower. */
const SHARPEST_COSINE = 0.5;

/** Cosine sum under which a direction and its neighbours stand as a hairpin. */
const HAIRPIN = -0.5;

/** Passes after which a guess is taken as it is. */
const MAX_PASSES = 1000;

/** Cosine of the sharpest bend between neighbours, the ends' directions included. */
function sharpestCosine(t: Float64Array, a: Float64Array, b: Float64Array): number {
  const last = t.length - 3;
  let least = Math.min(
    a[9]! * t[0]! + a[10]! * t[1]! + a[11]! * t[2]!,
    b[9]! * t[last]! + b[10]! * t[last + 1]! + b[11]! * t[last + 2]!,
  );
  for (let i = 3; i <= last; i += 3) {
    least = Math.min(least, t[i - 3]! * t[i]! + t[i - 2]! * t[i + 1]! + t[i - 1]! * t[i + 2]!);
  }
  return least;
}

/** One pass: every direction to the mean of itself and its neighbours, hairpins opened to a fixed side. */
function pass(t: Float64Array, a: Float64Array, b: Float64Array, out: Float64Array): void {
  const n = t.length;
  for (let i = 0; i < n; i += 3) {
    const p = i === 0 ? a : t;
    const pi = i === 0 ? 9 : i - 3;
    const q = i === n - 3 ? b : t;
    const qi = i === n - 3 ? 9 : i + 3;
    let x = p[pi]! + 2 * t[i]! + q[qi]!;
    let y = p[pi + 1]! + 2 * t[i + 1]! + q[qi + 1]!;
    let z = p[pi + 2]! + 2 * t[i + 2]! + q[qi + 2]!;
    const towards =
      (p[pi]! + q[qi]!) * t[i]! + (p[pi + 1]! + q[qi + 1]!) * t[i + 1]! + (p[pi + 2]! + q[qi + 2]!) * t[i + 2]!;
    if (towards < HAIRPIN) {
      const side = anySquareTo(unit([t[i]!, t[i + 1]!, t[i + 2]!] as Vec3));
      x += side[0];
      y += side[1];
      z += side[2];
    }
    const inv = 1 / lengthOf(x, y, z);
    out[i] = x * inv;
    out[i + 1] = y * inv;
    out[i + 2] = z * inv;
  }
}

/**
 * Spreads sharp bends of the workspace's tangents, ends' directions included, over their neighbours: a rod's energy
 * has no bound where neighbours oppose each other, and Newton's method has nothing to say there. Clocks stay; nodes
 * are to be placed again.
 */
export function softenGuess(ws: RodWorkspace): void {
  const { tangents, poseA, poseB } = ws.state;
  for (let i = 0; i < MAX_PASSES && sharpestCosine(tangents, poseA, poseB) < SHARPEST_COSINE; i++) {
    pass(tangents, poseA, poseB, ws.trial.tangents);
    tangents.set(ws.trial.tangents);
  }
}
