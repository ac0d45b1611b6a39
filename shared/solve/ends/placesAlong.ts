import { distance, lerp, type Vec3 } from '../../base/vec3.ts';

/** Places along a line of straight pieces, evenly spaced by its length and at most stepMm apart, both ends among them. mm. */
export function placesAlong(line: readonly Vec3[], stepMm: number): Vec3[] {
  const pieces: number[] = [];
  let wholeMm = 0;
  for (let i = 1; i < line.length; i++) {
    const mm = distance(line[i - 1] as Vec3, line[i] as Vec3);
    pieces.push(mm);
    wholeMm += mm;
  }
  const steps = Math.max(1, Math.ceil(wholeMm / stepMm));
  let piece = 0;
  let beforeMm = 0;
  const places: Vec3[] = [];
  for (let i = 0; i <= steps; i++) {
    const mm = (wholeMm * i) / steps;
    while (piece + 1 < pieces.length && mm > beforeMm + (pieces[piece] as number))
      beforeMm += pieces[piece++] as number;
    const longMm = pieces[piece] as number;
    const share = longMm > 0 ? Math.min(1, (mm - beforeMm) / longMm) : 0;
    places.push(lerp(line[piece] as Vec3, line[piece + 1] as Vec3, share));
  }
  return places;
}
