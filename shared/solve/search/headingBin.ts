import type { Vec3 } from '../../base/vec3.ts';

/** Each face of a cube round the origin is cut into this many strips both ways if nothing else is said: bins of about 18 to 25 degrees. */
export const USUAL_STRIPS = 4;
export const HEADING_BINS = headingBins(USUAL_STRIPS);

/** How many bins there are. */
export function headingBins(strips: number): number {
  return 6 * strips * strips;
}

/** Number of the bin, 0 to headingBins(strips) - 1, that holds a unit direction. Strips are even in angle along a face's middle. */
export function headingBin(direction: Vec3, strips = USUAL_STRIPS): number {
  const [x, y, z] = direction;
  const [ax, ay, az] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (ax >= ay && ax >= az) return face(strips, x > 0 ? 0 : 1, y / ax, z / ax);
  if (ay >= az) return face(strips, y > 0 ? 2 : 3, x / ay, z / ay);
  return face(strips, z > 0 ? 4 : 5, x / az, y / az);
}

function face(strips: number, number: number, u: number, v: number): number {
  return (number * strips + strip(strips, u)) * strips + strip(strips, v);
}

function strip(strips: number, u: number): number {
  const even = (Math.atan(u) * 4) / Math.PI;
  return Math.min(strips - 1, Math.floor(((even + 1) / 2) * strips));
}
