import { anySquareTo, cross, sub, unit, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, Place } from '../../document/lay/schema.ts';
import type { Skin } from '../../document/project/schema.ts';
import type { BayIndex, IndexedSkin } from '../bay/bayIndex.ts';
import { mouthPlace, placeAt } from '../checks/places.ts';
import { aimByCosine, lookOut, type RaySource } from './lookOut.ts';
import { spreadPoints } from './spreadPoints.ts';

/** Sides round the hose that are told apart. */
export const SECTORS = 6;
/** Rays from each side of each place: with half as many no temperature of the example bay moves by more than its band. */
export const RAYS_A_SECTOR = 1024;
/** mm. Places along the hose lie at most this far apart: a hose's own thickness, finer than heat from inches away varies. */
const PLACES_APART_MM = 20;
/** mm. Half of what a tangent is taken over. */
const TANGENT_MM = 2;

/** What is hot in a bay, and what stands before it. */
export interface HotBay {
  readonly hot: readonly IndexedSkin[];
  readonly shading: readonly IndexedSkin[];
}

/** The hot skins of a bay, and the others, which only shade. */
export function hotBay(bay: BayIndex): HotBay {
  const isHot = ({ skin }: IndexedSkin): boolean => hotTemperatureC(skin) !== undefined;
  return { hot: bay.skins.filter(isHot), shading: bay.skins.filter((s) => !isHot(s)) };
}

/** deg C of a skin that radiates by itself. */
export function hotTemperatureC(skin: Skin): number | undefined {
  return skin.kind === 'hot' ? skin.surfaceTemperatureC : undefined;
}

/** The places at which a hose is asked for its heat: from mouth to mouth, evenly. The lay has a path. */
export function heatPlaces(lay: Lay): Place[] {
  const from = mouthPlace(lay, 'a').arcLengthMm;
  const to = mouthPlace(lay, 'b').arcLengthMm;
  const steps = Math.max(1, Math.ceil((to - from) / PLACES_APART_MM));
  return Array.from({ length: steps + 1 }, (_, i) => placeAt(lay, from + ((to - from) * i) / steps));
}

/** Rays from one place that ended on each hot skin: number `sector * hot skins + skin`, the first sector where most heat comes from. */
export type HotSight = Float64Array;

/**
 * What each place of a hose sees of the hot skins: rays spread evenly round its outside and by the cosine, ending on hot
 * skins with nothing of the bay between. The hose bends less than it hides, so it does not shade itself; other hoses and its
 * ends are not in the bay. The same rays for the same lay.
 */
export function radiationAlong(
  lay: Lay,
  places: readonly Place[],
  { hot, shading }: HotBay,
  raysASector: number,
  watch: Watch,
): HotSight[] {
  const targets = hot.map((s) => s.bvh);
  const blockers = shading.map((s) => s.bvh);
  return places.map((place, i) => {
    stopIfCancelled(watch);
    const rays = raysOfPlace(lay, place, i);
    const turns: number[] = [];
    const skins: number[] = [];
    lookOut(targets, blockers, rays.source, SECTORS * raysASector, (ray, target) => {
      turns.push(rays.turnOf(ray));
      skins.push(target);
    });
    return inSectors(turns, skins, hot.length);
  });
}

/** Hits by side. The sides begin where the heat comes from, so that how a hose is turned about itself makes no difference. */
function inSectors(turns: readonly number[], skins: readonly number[], skinCount: number): HotSight {
  let [along, across] = [0, 0];
  for (const turn of turns) {
    along += Math.cos(turn);
    across += Math.sin(turn);
  }
  const middle = Math.atan2(across, along);
  const sight = new Float64Array(SECTORS * skinCount);
  turns.forEach((turn, i) => {
    const sectors = ((turn - middle) * SECTORS) / (2 * Math.PI) + 0.5;
    const sector = Math.floor(sectors - SECTORS * Math.floor(sectors / SECTORS)) % SECTORS;
    sight[sector * skinCount + (skins[i] as number)]! += 1;
  });
  return sight;
}

/** The rays of a place, and how far round the hose, rad, each leaves it. */
export interface PlaceRays {
  readonly source: RaySource;
  readonly turnOf: (ray: number) => number;
}

/** The rays of place number `number` along a lay. */
export function raysOfPlace(lay: Lay, place: Place, number: number): PlaceRays {
  const along = tangentAt(lay, place.arcLengthMm);
  const across = anySquareTo(along);
  const third = cross(along, across);
  const radiusMm = lay.outsideDiameterMm / 2;
  const points = spreadPoints(3, number);
  const at = new Float64Array(3);
  const turnOf = (i: number): number => {
    points(i, at);
    return 2 * Math.PI * at[0]!;
  };
  const source: RaySource = (i, ray) => {
    const turn = turnOf(i);
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    const nx = cos * across[0] + sin * third[0];
    const ny = cos * across[1] + sin * third[1];
    const nz = cos * across[2] + sin * third[2];
    ray.ox = place.point[0] + radiusMm * nx;
    ray.oy = place.point[1] + radiusMm * ny;
    ray.oz = place.point[2] + radiusMm * nz;
    aimByCosine(ray, nx, ny, nz, at[1]!, at[2]!);
  };
  return { source, turnOf };
}

function tangentAt(lay: Lay, arcLengthMm: number): Vec3 {
  const before = placeAt(lay, Math.max(0, arcLengthMm - TANGENT_MM)).point;
  const after = placeAt(lay, Math.min(lay.cutLengthMm, arcLengthMm + TANGENT_MM)).point;
  return unit(sub(after, before));
}
