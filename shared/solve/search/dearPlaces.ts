import { distance, type Vec3 } from '../../base/vec3.ts';

/** A place where a line failed costs this many times more at its middle if nothing else is said, less further off, nothing beyond so many radii. */
const TIMES_DEARER = 3;
const REACH_RADII = 0.5;
/** How far along the line to either side of such a place it is made dear too: a bend fails for where it comes from and goes to. */
const BESIDE_RADII = 0.5;

/** Places where lines failed, made dear so that later ones lead elsewhere where they can. */
export class DearPlaces {
  private readonly places: Vec3[] = [];
  private readonly radiusMm: number;
  private readonly timesDearer: number;

  constructor(radiusMm: number, timesDearer = TIMES_DEARER) {
    this.radiusMm = radiusMm;
    this.timesDearer = timesDearer;
  }

  /** How many times dearer than elsewhere a place is, 1 or more. */
  price(x: number, y: number, z: number): number {
    const reach = (REACH_RADII * this.radiusMm) ** 2;
    let price = 1;
    for (const [a, b, c] of this.places) {
      const share = ((x - a) ** 2 + (y - b) ** 2 + (z - c) ** 2) / reach;
      if (share < 1) price += this.timesDearer * (1 - share);
    }
    return price;
  }

  /** Makes the place of the line nearest to where it failed dear, and one to either side. */
  add(line: readonly Vec3[], failedAt: Vec3): void {
    let at = 0;
    for (const [i, place] of line.entries())
      if (distance(place, failedAt) < distance(line[at] as Vec3, failedAt)) at = i;
    for (const place of [line[at], this.beside(line, at, -1), this.beside(line, at, 1)])
      if (place !== undefined) this.places.push(place);
  }

  private beside(line: readonly Vec3[], at: number, step: 1 | -1): Vec3 | undefined {
    let gone = 0;
    for (let i = at + step; i >= 0 && i < line.length; i += step) {
      gone += distance(line[i - step] as Vec3, line[i] as Vec3);
      if (gone >= BESIDE_RADII * this.radiusMm) return line[i];
    }
    return undefined;
  }
}
