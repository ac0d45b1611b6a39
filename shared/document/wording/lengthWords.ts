import type { LengthConvention, LengthDatum } from '../lay/schema.ts';

/** The conventions of length by the names the trade calls them. */
export const CONVENTION_WORDS: Record<LengthConvention, string> = {
  'shoulder-to-shoulder': 'Cut, shoulder to shoulder',
  'mouth-to-mouth': 'Live, mouth to mouth',
  'seat-to-seat': 'Overall, seat to seat',
  'flare-to-flare': 'Flare to flare',
  'elbow-centreline': 'Elbow centreline',
  'banjo-eye': 'Banjo eye centre',
  'end-of-nut': 'End of nut',
};

/** The place of an end that a length goes to, in words. */
export const DATUM_WORDS: Record<LengthDatum, (end: 'A' | 'B') => string> = {
  shoulder: (end) => `the shoulder of END ${end}`,
  mouth: (end) => `the mouth of END ${end}`,
  seat: (end) => `the seat of END ${end}`,
  flare: (end) => `the outside edge of the nipple's flare at END ${end}`,
  'nut-reach': (end) => `the farthest reach of the nut of END ${end}`,
  centreline: (end) => `the seat centreline of END ${end}`,
  eye: (end) => `the centre of the eye of END ${end}`,
};

/** What a convention is called for these two ends: a flare is measured to a centreline where the other end is an elbow. */
export function conventionName(
  convention: LengthConvention,
  datum: { readonly a: LengthDatum; readonly b: LengthDatum },
): string {
  if (convention === 'flare-to-flare' && (datum.a !== 'flare' || datum.b !== 'flare')) return 'Flare to centreline';
  if (convention === 'elbow-centreline')
    return datum.a === 'centreline' && datum.b === 'centreline' ? 'Centreline to centreline' : 'Elbow centreline';
  return CONVENTION_WORDS[convention];
}
