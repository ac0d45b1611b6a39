import { type PerspectiveCamera, Vector3 } from 'three';

/** Shares of the picture, 0 to 1, that stay free at its edges. */
export interface ViewMargins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What is to be seen, and from which side. */
export interface ViewSubject {
  /** x, y, z each, mm */
  readonly points: Float32Array;
  /** unit, from the bay towards the eye */
  readonly look: Vector3;
  /** of the points' box, to begin from */
  readonly centre: Vector3;
  readonly sizeMm: number;
}

export interface FittedView {
  readonly eye: Vector3;
  readonly target: Vector3;
}

/** Rounds of moving the picture into its frame; each brings it about ten times nearer. */
const ROUNDS = 6;

/**
 * Where to stand, looking along -`look` with +Z up, so that all points fill the picture inside its margins. The points' own
 * picture is fitted, not a ball round them.
 */
export function fitView(camera: PerspectiveCamera, subject: ViewSubject, margins: ViewMargins): FittedView {
  const { points, look, centre, sizeMm } = subject;
  const { tall, wide, right, up } = frameOf(camera, look);
  const target = centre.clone();
  let away = (2 * sizeMm) / Math.min(tall, wide);
  for (let round = 0; round < ROUNDS; round++) {
    const seen = pictureOf(points, target, right, up, look, away);
    const half = { x: (seen.maxX - seen.minX) / 2, y: (seen.maxY - seen.minY) / 2 };
    const free = { x: wide * (1 - margins.left - margins.right), y: tall * (1 - margins.top - margins.bottom) };
    const grow = Math.max(half.x / free.x, half.y / free.y);
    const aside = { x: (margins.left - margins.right) * wide, y: (margins.bottom - margins.top) * tall };
    target.addScaledVector(right, ((seen.minX + seen.maxX) / 2 - aside.x * grow) * away);
    target.addScaledVector(up, ((seen.minY + seen.maxY) / 2 - aside.y * grow) * away);
    away *= grow;
  }
  return { eye: target.clone().addScaledVector(look, away), target };
}

/** Half the picture's height and width at a distance of one, and its directions. */
export function frameOf(
  camera: PerspectiveCamera,
  look: Vector3,
): { readonly tall: number; readonly wide: number; readonly right: Vector3; readonly up: Vector3 } {
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const right = new Vector3(0, 0, 1).cross(look).normalize();
  return { tall, wide: tall * camera.aspect, right, up: look.clone().cross(right) };
}

interface Picture {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

function pictureOf(
  points: Float32Array,
  target: Vector3,
  right: Vector3,
  up: Vector3,
  look: Vector3,
  away: number,
): Picture {
  const picture = { minX: Infinity, maxX: -Infinity, minY: Infinity, maxY: -Infinity };
  const place = new Vector3();
  for (let at = 0; at < points.length; at += 3) {
    place.fromArray(points, at).sub(target);
    const depth = away - place.dot(look);
    // What lies behind the eye has no place in the picture; the next round stands further off.
    if (depth <= away / 100) continue;
    const x = place.dot(right) / depth;
    const y = place.dot(up) / depth;
    picture.minX = Math.min(picture.minX, x);
    picture.maxX = Math.max(picture.maxX, x);
    picture.minY = Math.min(picture.minY, y);
    picture.maxY = Math.max(picture.maxY, y);
  }
  return picture;
}
