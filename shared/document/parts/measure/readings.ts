/** The kinds of end that are measured each in its own way; a straight flange is measured as a straight end. */
export const MEASURE_KINDS = ['straight', 'elbow', 'half-turn', 'banjo', 'flange'] as const;
export type MeasureKind = (typeof MEASURE_KINDS)[number];

export interface Reading {
  readonly key: string;
  /** as the drawing has it */
  readonly letter: string;
  readonly words: string;
  readonly unit: 'mm' | 'deg';
  /** needed: no C and drop without it; check: taken a second way, to see whether the readings hold together */
  readonly need: 'needed' | 'check';
}

const length = (key: string, letter: string, words: string, need: Reading['need'] = 'needed'): Reading => ({
  key,
  letter,
  words,
  unit: 'mm',
  need,
});

const TAIL = length('tailLength', 'T', 'tip of the tail to the shoulder that the hose butts on');
const TAIL_DIAMETER = length('tailDiameter', 'd', 'across the tail');
const INSERTION = length('insertion', 'I', 'shoulder to the mouth of socket or collar', 'check');

/** What is read off each kind of end with a caliper and a square, in the order of the hands. */
export const READINGS: Readonly<Record<MeasureKind, readonly Reading[]>> = {
  straight: [
    length('seatToTip', 'A', 'seat to the tip of the tail'),
    TAIL,
    length('seatToMouth', 'M', 'assembled: seat to the mouth of socket or collar', 'check'),
    INSERTION,
  ],
  elbow: [
    { key: 'soldAngle', letter: 'b', words: 'bend as it is sold', unit: 'deg', need: 'needed' },
    length('tipToInside', 'Ai', 'square on the tip, along the tail: to the edge of the rim inside the bend'),
    length('tipToOutside', 'Ao', 'the same to the edge of the rim outside the bend'),
    length('heightInside', 'Hi', 'tail flat on the plate: plate to the edge of the rim inside the bend'),
    length('heightOutside', 'Ho', 'plate to the edge of the rim outside the bend'),
    TAIL_DIAMETER,
    TAIL,
    length('rimDiameter', 'W', 'across the rim', 'check'),
    length('seatLeg', 'S', "middle of the rim to where the two axes cross, from the maker's card", 'check'),
    length('hoseLeg', 'B', "from there to the shoulder, from the maker's card", 'check'),
  ],
  'half-turn': [
    length('overLegs', 'O', 'over the outsides of both legs'),
    TAIL_DIAMETER,
    length('legDiameter', 'D', 'across the leg with the seat'),
    length('crownToSeat', 'Ks', 'square on the crown of the bend, along the leg: to the seat'),
    length('crownToTip', 'Kt', 'the same to the tip of the tail'),
    TAIL,
    length('gap', 'G', 'between the legs', 'check'),
    length('seatToTip', 'E', 'along the legs: seat to the tip of the tail', 'check'),
  ],
  banjo: [
    length('farEdgeToTip', 'A', 'far edge of the eye to the tip of the tail'),
    length('eyeDiameter', 'E', 'across the eye'),
    length('eyeThickness', 't', 'thickness of the eye, from washer face to washer face'),
    TAIL,
    length('holeToTip', 'N', 'near edge of the hole to the tip of the tail', 'check'),
    length('holeDiameter', 'h', 'across the hole', 'check'),
    length('tailTop', 'Z', 'eye flat on the plate: plate to the top of the tail', 'check'),
    { ...TAIL_DIAMETER, need: 'check' },
  ],
  flange: [
    length('farEdgeToTip', 'A', 'flange flat on the plate, square at its far edge: to the tip of the tail'),
    length('flangeAcross', 'F', 'across the flange, the same way'),
    length('tailTop', 'Z', 'plate to the top of the tail at its tip'),
    TAIL_DIAMETER,
    TAIL,
    length('tailTopInner', 'Y', 'plate to the top of the tail near the bend', 'check'),
    length('betweenTops', 'L', 'between these two heights, along the tail', 'check'),
  ],
};
