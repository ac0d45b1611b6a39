import type { Lay, SleeveCut } from '../../document/lay/schema.ts';
import { sleeveCut } from '../../document/lay/sleeveCut.ts';
import type { SheetRun } from '../input.ts';

/** What to cut the run's sleeve to: the report's own answer, or the same worked out for a report of the first builds. */
export function sleeveOf({ hose, sleeve, a, b }: SheetRun, lay: Lay): SleeveCut | undefined {
  if (sleeve === undefined) return undefined;
  const { cutLengthMm, centreline } = lay;
  const hoseDiameterMm = hose.outsideDiameterMm;
  return lay.sleeve ?? sleeveCut({ cutLengthMm, centreline, hoseDiameterMm, sleeve, a: a.end, b: b.end });
}
