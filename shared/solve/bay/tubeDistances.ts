import type { Box } from '../../geometry/box.ts';
import { KeptDistances } from './keptDistances.ts';
import { nearestTube, newNearestTube, type TubeField } from './tubeField.ts';

/** Exact distances to the surfaces of tubes, negative inside, and those already known; these live as long as the field. */
export interface TubeDistances {
  readonly tubes: TubeField;
  readonly kept: KeptDistances;
}

const known = new WeakMap<TubeField, KeptDistances>();

/** What is known of the distances to tubes, shared by all who ask. bounds: where most questions are, mm; the first asker's are kept. */
export function tubeDistances(tubes: TubeField, bounds: Box): TubeDistances {
  const kept = known.get(tubes) ?? new KeptDistances(bounds, (x, y, z, upToMm) => tubeGapMm(tubes, x, y, z, upToMm));
  known.set(tubes, kept);
  return { tubes, kept };
}

const found = newNearestTube();

/** To the nearest tube's surface, mm, negative inside; upToMm where it is at least that. */
export function tubeGapMm(tubes: TubeField, x: number, y: number, z: number, upToMm: number): number {
  return nearestTube(tubes, x, y, z, upToMm, found) ? found.gapMm : upToMm;
}
