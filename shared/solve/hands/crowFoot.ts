import { degreesToRadians } from '../../base/units.ts';
import { addScaled, lengthOf } from '../../base/vec3.ts';
import type { NutHands } from '../../document/lay/hands.ts';
import type { Bvh } from '../../geometry/bvh.ts';
import { type Arc, placeInArc } from './arcs.ts';
import type { Ball } from './balls.ts';
import type { Layer, Shadow } from './layer.ts';
import { isRodFree } from './rodRoom.ts';
import { barsOf, directionAt, swingOf, takenBy } from './swing.ts';
import type { Wrench } from './wrench.ts';

/** Times hex: from the nut's middle to the middle of the square that the extension goes in. Common practice, no source. */
const TO_SQUARE = 1.6;
/** mm. Radius of an extension and its ratchet's drive, and how far up they are looked at. Common practice, no source. */
const EXTENSION_RADIUS_MM = 10;
const EXTENSION_MM = 100;
/** deg. Clocks at which the extension is tried. */
const STEP_DEG = 5;

/**
 * How far a crow-foot swings: a short head in the wrench's layer with an extension of 10 mm radius that stands 100 mm up
 * along the axis, out of the part, 1.6 hex aside, and turns with it. The head exact, the extension tried every 5 degrees: told
 * to 5 degrees, never too wide by more than what slips between two of them.
 */
export function crowFootSwing(
  wrench: Wrench,
  layer: Layer,
  shadows: readonly Shadow[],
  bvhs: readonly Bvh[],
  balls: readonly Ball[],
): NonNullable<NutHands['crowFoot']> {
  const asideMm = TO_SQUARE * wrench.hexMm;
  const bars = barsOf({ ...wrench, lengthMm: asideMm + EXTENSION_RADIUS_MM, handleMm: 2 * EXTENSION_RADIUS_MM });
  const { on } = swingOf(takenBy(bars, shadows));
  const near = balls.filter(({ centre, radiusMm }) => isNear(layer, centre, radiusMm + asideMm + EXTENSION_RADIUS_MM));
  const free = Array.from({ length: Math.round(360 / STEP_DEG) }, (_, i) => {
    const clockRad = degreesToRadians(i * STEP_DEG);
    if (!on.some((arc: Arc) => placeInArc(arc, clockRad) !== undefined)) return false;
    const foot = addScaled(layer.middle, directionAt(layer, clockRad), asideMm);
    const top = addScaled(foot, layer.axis, EXTENSION_MM);
    return isRodFree({ from: foot, to: top, radiusMm: EXTENSION_RADIUS_MM }, bvhs, near);
  });
  return longestRun(free);
}

function isNear({ middle }: Layer, [x, y, z]: Ball['centre'], reachMm: number): boolean {
  return lengthOf(x - middle[0], y - middle[1], z - middle[2]) < reachMm + EXTENSION_MM;
}

/** The longest row of free clocks round the round. */
function longestRun(free: readonly boolean[]): NonNullable<NutHands['crowFoot']> {
  const count = free.length;
  if (free.every(Boolean)) return { widestDeg: 360, middleDeg: 0 };
  let best = { from: 0, length: 0 };
  for (let from = 0; from < count; from++) {
    let length = 0;
    while (length < count && free[(from + length) % count] === true) length++;
    if (length > best.length) best = { from, length };
  }
  if (best.length === 0) return { widestDeg: 0 };
  const widestDeg = (best.length - 1) * STEP_DEG;
  return { widestDeg, middleDeg: (best.from * STEP_DEG + widestDeg / 2) % 360 };
}
