import type { Vec3 } from '../../base/vec3.ts';
import type { RunField } from '../bay/runField.ts';
import { buildTubeField, nearestTube, newNearestTube } from '../bay/tubeField.ts';
import { withMargins } from '../search/changedField.ts';

/** A line, mostly that of a hose as it lies, to which a route is to keep. */
export interface NearLine {
  readonly line: readonly Vec3[];
  readonly withinMm: number;
}

/** The field with everything further than withinMm from a line counted as an obstacle: a search in it stays on the line's side of things. */
export function nearLineField(field: RunField, { line, withinMm }: NearLine): RunField {
  const tube = buildTubeField([{ run: '', points: line, radiusMm: 0 }]);
  const near = newNearestTube();
  const left = (x: number, y: number, z: number): number =>
    nearestTube(tube, x, y, z, 2 * withinMm, near) ? withinMm - near.gapMm : -withinMm;
  return withMargins(field, {
    coarseMarginMm: (x, y, z) => Math.min(left(x, y, z), field.coarseMarginMm(x, y, z)),
    mostMarginMm: (x, y, z) => {
      const here = left(x, y, z);
      return here < 0 ? here : Math.min(here, field.mostMarginMm(x, y, z));
    },
    marginMm: (x, y, z, upToMm) => {
      const most = left(x, y, z);
      return most < 0 ? most : Math.min(most, field.marginMm(x, y, z, Math.min(upToMm, most)));
    },
  });
}
