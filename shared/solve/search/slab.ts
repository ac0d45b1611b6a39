import { dot, sub, type Vec3 } from '../../base/vec3.ts';
import { withMargins } from './changedField.ts';
import type { ClearanceField } from './problem.ts';

/** The room between two planes, `halfMm` to either side of the one through `point` square to the unit `normal`. */
export interface Slab {
  readonly point: Vec3;
  readonly normal: Vec3;
  readonly halfMm: number;
}

/** A field whose room is only what lies in the slab. The slab's margin changes 1 mm per mm moved, so the field's bounds hold. */
export function withinSlab(field: ClearanceField, { point, normal, halfMm }: Slab): ClearanceField {
  const room = (x: number, y: number, z: number): number => halfMm - Math.abs(dot(sub([x, y, z], point), normal));
  return withMargins(field, {
    coarseMarginMm: (x: number, y: number, z: number) => Math.min(room(x, y, z), field.coarseMarginMm(x, y, z)),
    mostMarginMm: (x: number, y: number, z: number) => Math.min(room(x, y, z), field.mostMarginMm(x, y, z)),
    marginMm: (x: number, y: number, z: number, upToMm: number) => {
      const here = room(x, y, z);
      return Math.min(here, field.marginMm(x, y, z, Math.min(here, upToMm)));
    },
  });
}
