import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import { type ArcLinePath, pathLengthMm, samplePath } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, marginAt } from './clearSpace.ts';

const PLACES = 48;
/** Share of the path at either end that is never plugged. */
const END_SHARE = 0.15;

/** Places on a path where its margin is least, narrowest first, at least `apartMm` from each other and away from the ends. */
export function narrowPlaces(space: ClearSpace, path: ArcLinePath, apartMm: number): Vec3[] {
  const all = samplePath(path, pathLengthMm(path) / PLACES)
    .map(({ point }) => ({ point, margin: marginAt(space, point[0], point[1], point[2]) }))
    .filter((_, i) => i >= END_SHARE * PLACES && i <= (1 - END_SHARE) * PLACES)
    .sort((a, b) => a.margin - b.margin);
  const places: Vec3[] = [];
  for (const { point } of all) {
    const free = places.every((p) => lengthOf(p[0] - point[0], p[1] - point[1], p[2] - point[2]) >= apartMm);
    if (free) places.push(point);
  }
  return places;
}
