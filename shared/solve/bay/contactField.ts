import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import { nearestPoint, newNearest } from '../../geometry/bvh.ts';
import { type ContactField, type Gap, ROOM_TOLD_EXACTLY_MM } from '../rod/rodProblem.ts';
import type { BayIndex } from './bayIndex.ts';
import type { DistanceBounds, KeptDistances } from './keptDistances.ts';
import { type Asked, askedDistanceMm, type RunKeeps, tubeGroups } from './runField.ts';
import { type SkinDistances, skinDistances } from './skinDistances.ts';
import { type TubeDistances, tubeDistances } from './tubeDistances.ts';
import { nearestTube, newNearestTube, type TubeField } from './tubeField.ts';

/** mm. Beyond this a hose touches nothing on this step of its relaxation; further things are answered as this far. */
const REACH_MM = 25;

/**
 * What a hose of the given outside radius may come to lie against: every surface of the bay and every other run. Gaps
 * are exact up to `ROOM_TOLD_EXACTLY_MM`; the rule of held places keeps the mouth from being pushed off its own port.
 */
export function buildContactField(
  bay: BayIndex,
  tubes: TubeField,
  outsideRadiusMm: number,
  held: readonly Vec3[],
): ContactField {
  return new ContactOfThings(
    bay.skins.map((skin) => ({ ...skinDistances(skin), wholeMm: outsideRadiusMm })),
    tubes.tubes.length === 0 ? [] : [{ ...tubeDistances(tubes, bay.bounds), wholeMm: outsideRadiusMm }],
    held,
  );
}

/**
 * The same as if everything stood out by what is asked from it, and by moreMm: a hose let lie against this is the smoothest that keeps
 * clear, and where it leans is where it has to be held.
 */
export function buildKeptField(bay: BayIndex, tubes: TubeField, keeps: RunKeeps, moreMm: number): ContactField {
  return new ContactOfThings(
    bay.skins.map((skin) => ({ ...skinDistances(skin), wholeMm: (keeps.skinMm.get(skin.skin.id) ?? 0) + moreMm })),
    tubeGroups(tubes, keeps).map(({ field, wholeMm }) => ({
      ...tubeDistances(field, bay.bounds),
      wholeMm: wholeMm + moreMm,
    })),
    keeps.held,
  );
}

/** wholeMm: how near to each thing a centreline comes before it touches, away from held places. */
class ContactOfThings implements ContactField {
  private readonly skins: readonly (SkinDistances & Asked)[];
  private readonly tubes: readonly (TubeDistances & Asked)[];
  private readonly held: readonly Vec3[];

  constructor(
    skins: readonly (SkinDistances & Asked)[],
    tubes: readonly (TubeDistances & Asked)[],
    held: readonly Vec3[],
  ) {
    this.skins = skins;
    this.tubes = tubes;
    this.held = held;
  }

  gapAt(x: number, y: number, z: number, out: Gap): void {
    const cone = askedDistanceMm(Number.POSITIVE_INFINITY, this.held, [x, y, z]);
    const roomMm = leastRoomMm(this.tubes, x, y, z, cone, leastRoomMm(this.skins, x, y, z, cone, REACH_MM));
    if (roomMm > ROOM_TOLD_EXACTLY_MM) {
      out.gapMm = roomMm;
      return;
    }
    let gap = REACH_MM;
    let px = Number.NaN;
    let py = Number.NaN;
    let pz = Number.NaN;
    for (const { bvh, kept, wholeMm } of this.skins) {
      const asked = Math.min(wholeMm, cone);
      kept.bound(x, y, z, about);
      if (about.leastMm >= gap + asked) continue;
      if (!nearestPoint(bvh, x, y, z, Math.min(gap + asked, about.mostMm), near)) continue;
      gap = near.distanceMm - asked;
      px = near.x;
      py = near.y;
      pz = near.z;
    }
    for (const { tubes, kept, wholeMm } of this.tubes) {
      const asked = Math.min(wholeMm, cone);
      kept.bound(x, y, z, about);
      if (about.leastMm >= gap + asked) continue;
      if (!nearestTube(tubes, x, y, z, Math.min(gap + asked, about.mostMm), nearTube)) continue;
      gap = nearTube.gapMm - asked;
      px = nearTube.x;
      py = nearTube.y;
      pz = nearTube.z;
    }
    out.gapMm = gap;
    const away = lengthOf(x - px, y - py, z - pz);
    const scale = away > 0 ? 1 / away : 0;
    out.nx = away > 0 ? (x - px) * scale : 0;
    out.ny = away > 0 ? (y - py) * scale : 0;
    out.nz = away > 0 ? (z - pz) * scale : 1;
  }
}

const near = newNearest();
const nearTube = newNearestTube();
const about: DistanceBounds = { leastMm: 0, mostMm: 0 };

/** A lower bound on the gap to several things by what is known near by, mm, at most `mostMm`; of a gap to be told exactly it says only that. */
function leastRoomMm(
  things: readonly ({ readonly kept: KeptDistances } & Asked)[],
  x: number,
  y: number,
  z: number,
  coneMm: number,
  mostMm: number,
): number {
  let room = mostMm;
  for (const { kept, wholeMm } of things) {
    if (room <= ROOM_TOLD_EXACTLY_MM) break;
    kept.bound(x, y, z, about);
    room = Math.min(room, about.leastMm - Math.min(wholeMm, coneMm));
  }
  return room;
}
