import { lengthsOf } from '../../document/lay/lengthsOf.ts';
import { type MeasuredLength, sameMeasure } from '../../document/lay/sameMeasure.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { SheetRun } from '../input.ts';

/** The lengths of a hose by name: the report's own, or the same worked out for a report of the first builds. */
export function lengthsOfRun({ a, b }: SheetRun, lay: Lay): MeasuredLength[] {
  return sameMeasure(lay.lengths ?? lengthsOf({ cutLengthMm: lay.cutLengthMm, a: a.end, b: b.end }));
}
