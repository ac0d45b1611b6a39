import { lastAsked } from '../../base/lastAsked.ts';
import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Box } from '../../geometry/box.ts';
import { nearestDistance } from '../../geometry/bvh.ts';
import type { ValueOfPlace } from '../../geometry/curveLimits.ts';
import type { BayIndex } from './bayIndex.ts';
import { coarseMargins } from './coarseMargins.ts';
import type { DistanceBounds, KeptDistances } from './keptDistances.ts';
import { type SkinDistances, skinDistances } from './skinDistances.ts';
import { type TubeDistances, tubeDistances, tubeGapMm } from './tubeDistances.ts';
import { type TubeField, tubesOfRuns } from './tubeField.ts';

/**
 * The rule of held places. A run must start at its port, and the port stands on the bay; a clamp stands on its bracket, a
 * pass-through in its panel. So near its own two seats, clamps and pass-throughs the distance asked of the centreline is
 * cut to HELD_SLOPE times the distance from that place: a cone of 30 degrees about any line that leaves it. Away from
 * them (beyond asked distance / HELD_SLOPE) the whole distance is asked. The same rule holds against other runs, whose
 * ports may be neighbours.
 */
export const HELD_SLOPE = 0.5;

/** What one run must keep from everything else, centreline to surface, mm. */
export interface RunKeeps {
  /** by skin id: hose radius + clearance + scan uncertainty */
  readonly skinMm: ReadonlyMap<string, number>;
  /** from the surface of other runs: hose radius + spacing */
  readonly tubeMm: number;
  /** by run, where it is not `tubeMm`: hoses of the same bundle */
  readonly mateMm?: ReadonlyMap<string, number>;
  /** seats of both ports, clamps and pass-throughs */
  readonly held: readonly Vec3[];
}

/**
 * Where the centreline of one run may go: margin = least over everything of (distance - distance asked there), and the
 * way to the edge of what was scanned, mm.
 * Satisfies the search's ClearanceField. Margins change at most 1 + HELD_SLOPE mm per mm moved, and 1 where the whole distance is asked.
 */
export interface RunField {
  readonly bounds: Box;
  readonly lipschitz: number;
  /** mm the margin may change per mm moved within so many mm of a place: 1 where no held place is near */
  steepest(x: number, y: number, z: number, withinMm: number): number;
  coarseMarginMm(x: number, y: number, z: number): number;
  /** An upper bound on the margin, mm; infinite where none is known. */
  mostMarginMm(x: number, y: number, z: number): number;
  marginMm(x: number, y: number, z: number, upToMm: number): number;
}

/** The distance asked of a centreline point, the rule of held places included. wholeMm: what is asked away from ports. */
export function askedDistanceMm(wholeMm: number, held: readonly Vec3[], point: Vec3): number {
  let near = Number.POSITIVE_INFINITY;
  for (const place of held) near = Math.min(near, distance(point, place));
  return Math.min(wholeMm, HELD_SLOPE * near);
}

type CoarseMargins = (x: number, y: number, z: number) => number;

/** Of a bay: by what is kept from its skins, those asked for last. A run asks by a few shares of each clearance, and runs of like hoses the same. */
const known = new WeakMap<BayIndex, Map<string, CoarseMargins>>();
const MOST_KNOWN = 4;

/**
 * A lower bound on the margin to every skin where the whole distance is asked, by point, mm. Kept for those asked for last in this bay.
 */
export function skinMargins(bay: BayIndex, keeps: RunKeeps): CoarseMargins {
  const kept = bay.skins.map((skin) => ({ grid: skin.grid, wholeMm: keeps.skinMm.get(skin.skin.id) ?? 0 }));
  const key = JSON.stringify(kept.map(({ wholeMm }) => wholeMm));
  const last = known.get(bay) ?? new Map<string, CoarseMargins>();
  known.set(bay, last);
  return lastAsked(last, key, MOST_KNOWN, () => coarseMargins(kept, FAR_MM));
}

/** The field of one run, bay frame, mm: the bay's skins, the tubes of other runs, and the edge of what was scanned, by what the run keeps from each. */
export function buildRunField(bay: BayIndex, tubes: TubeField, keeps: RunKeeps): RunField {
  return new FieldOfRun(bay, tubes, keeps);
}

/** A class, so that what every search asks most is compiled once: code of functions made anew for each run is thrown away with them. */
class FieldOfRun implements RunField {
  readonly bounds: Box;
  readonly lipschitz = 1 + HELD_SLOPE;
  private readonly coarse: CoarseMargins;
  /** those most is asked from first */
  private readonly skins: readonly (SkinDistances & Asked)[];
  private readonly tubes: readonly (TubeDistances & Asked)[];
  private readonly held: readonly Vec3[];
  private readonly mostAskedMm: number;

  constructor(bay: BayIndex, tubes: TubeField, keeps: RunKeeps) {
    this.bounds = boundsWith(bay.bounds, keeps.held);
    this.coarse = skinMargins(bay, keeps);
    this.skins = bay.skins
      .map((skin) => ({ ...skinDistances(skin), wholeMm: keeps.skinMm.get(skin.skin.id) ?? 0 }))
      .sort((a, b) => b.wholeMm - a.wholeMm);
    this.tubes = tubeGroups(tubes, keeps).map(({ field, wholeMm }) => ({
      ...tubeDistances(field, bay.bounds),
      wholeMm,
    }));
    this.held = keeps.held;
    this.mostAskedMm = Math.max(0, ...[...this.skins, ...this.tubes].map(({ wholeMm }) => wholeMm));
  }

  steepest(x: number, y: number, z: number, withinMm: number): number {
    return this.slopeReach(x, y, z) - HELD_SLOPE * withinMm >= this.mostAskedMm ? 1 : this.lipschitz;
  }

  coarseMarginMm(x: number, y: number, z: number): number {
    const reach = this.slopeReach(x, y, z);
    let least = this.coarse(x, y, z);
    if (least < COARSE_IS_ENOUGH_MM) {
      let finer = COARSE_IS_ENOUGH_MM;
      for (const { kept, wholeMm } of this.skins) {
        kept.bound(x, y, z, about);
        finer = Math.min(finer, about.leastMm - Math.min(wholeMm, reach));
        if (finer <= least) break;
      }
      least = Math.max(least, finer);
    }
    least = Math.min(least, insideMm(this.bounds, x, y, z));
    for (const { kept, wholeMm } of this.tubes) {
      kept.bound(x, y, z, about);
      least = Math.min(least, about.leastMm - Math.min(wholeMm, reach));
    }
    return least;
  }

  mostMarginMm(x: number, y: number, z: number): number {
    const reach = this.slopeReach(x, y, z);
    const most = mostOver(this.skins, x, y, z, reach, insideMm(this.bounds, x, y, z));
    return mostOver(this.tubes, x, y, z, reach, most);
  }

  marginMm(x: number, y: number, z: number, upToMm: number): number {
    const reach = this.slopeReach(x, y, z);
    let least = Math.min(upToMm, insideMm(this.bounds, x, y, z));
    for (const { tubes, kept, wholeMm } of this.tubes) {
      const asked = Math.min(wholeMm, reach);
      kept.bound(x, y, z, about);
      if (about.leastMm - asked >= least) continue;
      least = Math.min(least, tubeGapMm(tubes, x, y, z, Math.min(asked + least, about.mostMm)) - asked);
    }
    if (this.coarse(x, y, z) >= least) return least;
    for (const { bvh, kept, wholeMm } of this.skins) {
      const asked = Math.min(wholeMm, reach);
      kept.bound(x, y, z, about);
      if (about.leastMm - asked >= least) continue;
      const d = nearestDistance(bvh, x, y, z, Math.min(asked + least, about.mostMm));
      if (d - asked < least) least = d - asked;
    }
    return least;
  }

  /** What is asked at most so far from the nearest held place, mm. */
  private slopeReach(x: number, y: number, z: number): number {
    let square = Number.POSITIVE_INFINITY;
    for (const p of this.held) square = Math.min(square, (x - p[0]) ** 2 + (y - p[1]) ** 2 + (z - p[2]) ** 2);
    return HELD_SLOPE * Math.sqrt(square);
  }
}

/** An upper bound on the least margin to several things, mm, at most `most`. */
function mostOver(
  things: readonly ({ readonly kept: KeptDistances } & Asked)[],
  x: number,
  y: number,
  z: number,
  reachMm: number,
  most: number,
): number {
  let least = most;
  for (const { kept, wholeMm } of things) {
    kept.bound(x, y, z, about);
    least = Math.min(least, about.mostMm - Math.min(wholeMm, reachMm));
  }
  return least;
}

/** How far a centreline keeps from a thing, away from held places. */
export interface Asked {
  readonly wholeMm: number;
}

const about: DistanceBounds = { leastMm: 0, mostMm: 0 };

/** A field's margin as a value of places. */
export class MarginOf implements ValueOfPlace {
  private readonly field: Pick<RunField, 'marginMm'>;

  constructor(field: Pick<RunField, 'marginMm'>) {
    this.field = field;
  }

  valueAt([x, y, z]: Vec3, upTo: number): number {
    return this.field.marginMm(x, y, z, upTo);
  }
}

/** Other runs by what is asked from them: mostly one group, and one for the hoses of the same bundle. */
export function tubeGroups(tubes: TubeField, { tubeMm, mateMm }: RunKeeps): { field: TubeField; wholeMm: number }[] {
  if (tubes.tubes.length === 0) return [];
  if (mateMm === undefined || mateMm.size === 0) return [{ field: tubes, wholeMm: tubeMm }];
  const askedOf = (run: string): number => mateMm.get(run) ?? tubeMm;
  return [...new Set(tubes.tubes.map((t) => askedOf(t.run)))].map((wholeMm) => {
    const runs = new Set(tubes.tubes.flatMap((t) => (askedOf(t.run) === wholeMm ? [t.run] : [])));
    return { field: tubesOfRuns(tubes, runs), wholeMm };
  });
}

/** The box in which hoses may run, widened so that a run's own ports and clamps have a bend's room about them too. */
function boundsWith({ min, max }: Box, held: readonly Vec3[]): Box {
  const wide = (k: 0 | 1 | 2, of: (...v: number[]) => number, from: number, room: number): number =>
    of(from, ...held.map((p) => p[k] + room));
  return {
    min: [
      wide(0, Math.min, min[0], -ROOM_MM),
      wide(1, Math.min, min[1], -ROOM_MM),
      wide(2, Math.min, min[2], -ROOM_MM),
    ],
    max: [wide(0, Math.max, max[0], ROOM_MM), wide(1, Math.max, max[1], ROOM_MM), wide(2, Math.max, max[2], ROOM_MM)],
  };
}

/** mm. Room about a held place, as about the scan. */
const ROOM_MM = 150;

/** How far inside a box a point is, mm; negative outside. What was not scanned is not known to be free. */
function insideMm({ min, max }: Box, x: number, y: number, z: number): number {
  return Math.min(x - min[0], max[0] - x, y - min[1], max[1] - y, z - min[2], max[2] - z);
}

/** mm. A bound on the margin of this much is made no better: every search takes it as clear. */
const COARSE_IS_ENOUGH_MM = 12;

/** mm. Stands for "nothing near": larger than any bay. */
const FAR_MM = 1e6;
