import type { Vec3 } from '../../base/vec3.ts';

/** Each face of a cube round the origin is cut into this many strips both ways: bins of about 18 to 25 degrees. */
const STRIPS = 4;
export const HEADING_BINS = 6 * STRIPS * STRIPS;

/** Number of the bin, 0 to HEADING_BINS - 1, that holds a unit direction. Strips are even in angle along a face's middle. */
export function headingBin(direction: Vec3): number {
  const [x, y, z] = direction;
  const [ax, ay, az] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (ax >= ay && ax >= az) return face(x > 0 ? 0 : 1, y / ax, z / ax);
  if (ay >= az) return face(y > 0 ? 2 : 3, x / ay, z / ay);
  return face(z > 0 ? 4 : 5, x / az, y / az);
}

function face(number: number, u: number, v: number): number {
  return (number * STRIPS + strip(u)) * STRIPS + strip(v);
}

function strip(u: number): number {
  const even = (Math.atan(u) * 4) / Math.PI;
  return Math.min(STRIPS - 1, Math.floor(((even + 1) / 2) * STRIPS));
}
