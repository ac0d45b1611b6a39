import type { End, Hose, Sleeve } from '../parts/schema.ts';
import type { Lay, SleeveCut } from './schema.ts';
import { sleeveCut } from './sleeveCut.ts';

/** A hose with its ends and what goes over it. */
export interface SleevedHose {
  readonly hose: Hose;
  readonly sleeve?: Sleeve | undefined;
  readonly a: { readonly end: End };
  readonly b: { readonly end: End };
}

/** What to cut the run's sleeve to: the report's own answer, or the same worked out for a report of the first builds. */
export function sleeveOf({ hose, sleeve, a, b }: SleevedHose, lay: Lay): SleeveCut | undefined {
  if (sleeve === undefined) return undefined;
  const { cutLengthMm, centreline } = lay;
  const hoseDiameterMm = hose.outsideDiameterMm;
  return lay.sleeve ?? sleeveCut({ cutLengthMm, centreline, hoseDiameterMm, sleeve, a: a.end, b: b.end });
}
