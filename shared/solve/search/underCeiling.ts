import { withBounds } from './changedField.ts';
import type { NoCrest } from './noCrest.ts';
import type { ClearanceField } from './problem.ts';

/** A field whose room ends at the ceiling. */
export function underCeiling(field: ClearanceField, { ceilingMm }: Pick<NoCrest, 'ceilingMm'>): ClearanceField {
  const { min, max } = field.bounds;
  return withBounds(field, { min, max: [max[0], max[1], Math.max(min[2], Math.min(max[2], ceilingMm))] });
}
