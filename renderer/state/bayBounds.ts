import { ZERO } from '../../shared/base/vec3.ts';
import type { OpenDocument } from './documentStore.ts';
import type { CutBox } from './sectionStore.ts';

type Bay = NonNullable<OpenDocument['bay']>;

const known = new WeakMap<Bay, CutBox>();

/** The box round everything that is drawn of a bay, mm; found once. */
export function bayBounds(bay: Bay): CutBox {
  const before = known.get(bay);
  if (before !== undefined) return before;
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = low.map((n) => -n);
  for (const vertex of bay.indices)
    for (let axis = 0; axis < 3; axis++) {
      const at = bay.positions[vertex * 3 + axis] as number;
      low[axis] = Math.min(low[axis] as number, at);
      high[axis] = Math.max(high[axis] as number, at);
    }
  const triple = ([x, y, z]: number[]): CutBox['low'] => [x as number, y as number, z as number];
  const box = bay.indices.length === 0 ? { low: ZERO, high: ZERO } : { low: triple(low), high: triple(high) };
  known.set(bay, box);
  return box;
}
