import { distance, lerp, type Vec3 } from '../../base/vec3.ts';

/** Places along a line of straight pieces, evenly spaced by its length and at most stepMm apart, both ends among them. mm. */
export function placesAlong(line: readonly Vec3[], stepMm: number): Vec3[] {
  const pieces = line.slice(1).map((to, i) => distance(line[i] as Vec3, to));
  const wholeMm = pieces.reduce((a, b) => a + b, 0);
  const steps = Math.max(1, Math.ceil(wholeMm / stepMm));
  let piece = 0;
  let beforeMm = 0;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const mm = (wholeMm * i) / steps;
    while (piece + 1 < pieces.length && mm > beforeMm + (pieces[piece] as number))
      beforeMm += pieces[piece++] as number;
    const longMm = pieces[piece] as number;
    return lerp(line[piece] as Vec3, line[piece + 1] as Vec3, longMm > 0 ? Math.min(1, (mm - beforeMm) / longMm) : 0);
  });
}
