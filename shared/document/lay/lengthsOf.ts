import { cutOffMm } from '../parts/cutOff.ts';
import type { End } from '../parts/schema.ts';
import { DATUM_WORDS } from '../wording/lengthWords.ts';
import type { LengthConvention, LengthDatum, NamedLength } from './schema.ts';

type MeasuredEnd = Pick<
  End,
  'form' | 'seat' | 'bendAngleDeg' | 'seatToBendMm' | 'bendToShoulderMm' | 'shoulderToMouthMm' | 'dropMm' | 'nutReachMm'
>;

/** A hose with its ends, as far as lengths are concerned. */
export interface MeasuredHose {
  /** shoulder to shoulder, mm */
  readonly cutLengthMm: number;
  readonly a: MeasuredEnd;
  readonly b: MeasuredEnd;
}

/**
 * The length of a hose in every convention of the trade that applies to its two ends, mm, measured along the straight hose: cut
 * length plus what each end adds from its shoulder to the place that is measured to (C to the seat's centre; C and the nut's
 * reach to the end of a straight nut; nothing to a shoulder; less the hose that is in it to a mouth). Where a part's table lacks
 * a figure the answer names it instead of a number. Conventions: MIL-DTL-83796/5 Fig. 2 notes 1-4 (centreline of the sealing end,
 * parallel to the straight hose); hose makers' catalogues (farthest reach of the nut; seat to seat; eye of a banjo); an aircraft
 * hose shop (flare to flare, which is not end of nut to end of nut). Exact.
 *
 *      nut   |<------- end of nut ---------->|
 *      seat    |<----- seat to seat ------>|
 *      cut         |<- shoulder to shoulder ->|
 */
export function lengthsOf(hose: MeasuredHose): NamedLength[] {
  const { a, b } = hose;
  const measured = (convention: LengthConvention, datumA: LengthDatum, datumB: LengthDatum): NamedLength =>
    namedLength(hose, convention, { a: datumA, b: datumB });
  const applies = (yes: boolean, convention: LengthConvention, of: (end: MeasuredEnd) => LengthDatum): NamedLength[] =>
    yes ? [measured(convention, of(a), of(b))] : [];
  return [
    measured('shoulder-to-shoulder', 'shoulder', 'shoulder'),
    measured('mouth-to-mouth', 'mouth', 'mouth'),
    measured('seat-to-seat', seatDatum(a), seatDatum(b)),
    ...applies(toFlares(a, b), 'flare-to-flare', (end) => (isStraightFlare(end) ? 'flare' : seatDatum(end))),
    ...applies(isElbow(a) || isElbow(b), 'elbow-centreline', seatDatum),
    ...applies(isBanjo(a) || isBanjo(b), 'banjo-eye', seatDatum),
    ...applies(isStraightNut(a) || isStraightNut(b), 'end-of-nut', (end) =>
      isStraightNut(end) ? 'nut-reach' : seatDatum(end),
    ),
  ];
}

function isBanjo(end: MeasuredEnd): boolean {
  return end.form === 'banjo';
}

function isElbow(end: MeasuredEnd): boolean {
  return end.bendAngleDeg > 0 && !isBanjo(end);
}

function isStraightNut(end: MeasuredEnd): boolean {
  return end.bendAngleDeg === 0 && (end.form ?? 'nut') === 'nut';
}

function isStraightFlare(end: MeasuredEnd): boolean {
  return isStraightNut(end) && end.seat.startsWith('flare');
}

/** Asked of a straight flared end with another one, or with an elbow: flare to flare, flare to centreline. */
function toFlares(a: MeasuredEnd, b: MeasuredEnd): boolean {
  const other = (end: MeasuredEnd): boolean => isStraightFlare(end) || isElbow(end);
  return (isStraightFlare(a) && other(b)) || (isStraightFlare(b) && other(a));
}

/** What of an end the overall length goes to. */
function seatDatum(end: MeasuredEnd): LengthDatum {
  if (isBanjo(end)) return 'eye';
  return end.bendAngleDeg > 0 ? 'centreline' : 'seat';
}

function namedLength(hose: MeasuredHose, convention: LengthConvention, datum: NamedLength['datum']): NamedLength {
  const added = { a: addedMm(hose.a, datum.a), b: addedMm(hose.b, datum.b) };
  const missing = (['a', 'b'] as const).flatMap((side) =>
    added[side] === undefined
      ? [`how far the nut of END ${side.toUpperCase()} reaches past its seat (nut_reach_mm)`]
      : [],
  );
  const notes = (['a', 'b'] as const).flatMap((side) => otherwise(hose[side], datum[side], side));
  return {
    convention,
    datum,
    from: DATUM_WORDS[datum.a]('A'),
    to: DATUM_WORDS[datum.b]('B'),
    ...(added.a === undefined || added.b === undefined
      ? {}
      : { lengthMm: hose.cutLengthMm + added.a + added.b, addedMm: { a: added.a, b: added.b } }),
    ...(missing.length === 0 ? {} : { missing }),
    ...(notes.length === 0 ? {} : { notes }),
  };
}

/** mm along the straight hose from the shoulder outward to the place measured to; undefined where the table does not give it. */
function addedMm(end: MeasuredEnd, datum: LengthDatum): number | undefined {
  if (datum === 'shoulder') return 0;
  if (datum === 'mouth') return -end.shoulderToMouthMm;
  if (datum === 'nut-reach') return end.nutReachMm === undefined ? undefined : cutOffMm(end) + end.nutReachMm;
  return cutOffMm(end);
}

/** Where the trade is of two minds about this very end. */
function otherwise(end: MeasuredEnd, datum: LengthDatum, side: 'a' | 'b'): string[] {
  const name = `END ${side.toUpperCase()}`;
  if (datum === 'seat' && end.form === 'male')
    return [`${name} is a male end: here to its seal face; some shops measure to the end of the thread`];
  if (datum === 'centreline' && end.form === 'flange' && end.bendAngleDeg < 90)
    return [
      `${name} is a bent flange: here to the centre of its face; MIL-DTL-83796/5 measures a 45 degree flange to its front edge`,
    ];
  return [];
}
