/** A rule's figure as the trade has it. */
export interface InWords {
  /** as the collected findings of the trade have it, to the letter */
  readonly words: string;
  /** the rule's figure in the unit of those words */
  readonly printed: number;
  /** from the rule's own unit */
  readonly factor?: number;
}
const INCH = 1 / 25.4;
const PSI = 1 / 6.894757293168;

/** Rules whose figures were read in documents of the trade that are in none of the tables. */
export const TRADE: Readonly<Record<string, InWords>> = {
  'clearance-hot': { words: '3 in is a trade minimum', printed: 3, factor: INCH },
  'heat-sleeve-within': { words: 'sleeve everything within 6 in', printed: 6, factor: INCH },
  'turbo-ball-pressure-least': { words: '40-45 psi at the turbo at max rpm', printed: 40, factor: PSI },
  'turbo-ball-pressure-most': { words: '40-45 psi at the turbo at max rpm', printed: 45, factor: PSI },
  'turbo-ball-restrictor-least': { words: '0.040 in / 1.0 mm (another: 1.0-1.5 mm)', printed: 1 },
  'turbo-ball-restrictor-most': { words: '0.040 in / 1.0 mm (another: 1.0-1.5 mm)', printed: 1.5 },
  'turbo-ball-feed-dash': { words: '-3/-4 feed', printed: 3 },
  'turbo-journal-feed-bore': { words: '-4 or 0.25 in bore', printed: 0.25, factor: INCH },
  'turbo-housing-turn': { words: 'rotate housing ≤20°', printed: 20 },
  'clock-tolerance-army-short': { words: 'aircraft TM ±5° to 36 in, ±10° longer', printed: 5 },
  'clock-tolerance-army-long': { words: 'aircraft TM ±5° to 36 in, ±10° longer', printed: 10 },
  'push-on-pressure': { words: 'push-on 300 °F/250-350 psi ceiling', printed: 250, factor: PSI },
  'proof-multiple': { words: 'fluoropolymer 1.5× for 1 min', printed: 1.5 },
  'proof-age': { words: 'retest if the test is >1 year old at installation', printed: 1, factor: 1 / 12 },
  'inspection-months': { words: 'Machine hydraulics (Germany): yearly check', printed: 1, factor: 1 / 12 },
  'hose-clamps-apart': { words: 'clamp ≥1/4 in from hose end', printed: 0.25, factor: INCH },
  'rigid-line-clamp': { words: 'within-4-in fixing', printed: 4, factor: INCH },
  'exhaust-test-pressure': { words: 'hold 4 psi (27.6 kPa) 5 min', printed: 4, factor: PSI },
  'exhaust-test-hold': { words: 'hold 4 psi (27.6 kPa) 5 min', printed: 5, factor: 1 / 60 },
};
/** Rules whose figures were read in the code itself, of which the findings of the trade have nothing. */
export const CODE: Readonly<Record<string, InWords>> = {
  // 33 CFR 183.564(d)(1): minimum nominal band width of at least one-half inch
  'filler-clamp-band': { words: 'at least one-half inch', printed: 0.5, factor: INCH },
};
/** 300 F, as push-on joints are held to. */
export const PUSH_ON_C = { words: 'push-on 300 °F/250-350 psi ceiling', printed: ((300 - 32) * 5) / 9 };

/** Rules that hold a thing to its own figure, which its own table has. */
export const OF_THE_PART: Readonly<Record<string, string>> = {
  'bend-radius': "the hose's own radius",
  'pressure-rating': "the part's own rating",
  'drain-bore': "the housing's own hole",
  'push-on-temperature': 'compared in degrees F below',
};
