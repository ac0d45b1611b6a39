import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../../../shared/base/random.ts';
import { completeEnd } from '../../../../../shared/document/parts/completeEnd.ts';
import { cutOffMm, dropMm } from '../../../../../shared/document/parts/cutOff.ts';
import { measureEnd, type Readings } from '../../../../../shared/document/parts/measure/measureEnd.ts';
import { MEASURE_KINDS, READINGS } from '../../../../../shared/document/parts/measure/readings.ts';
import { sampleEnd } from '../../../../arbitraries/projects.ts';

const radians = (deg: number): number => (deg * Math.PI) / 180;

/**
 * What a caliper and a square would read off an elbow of given legs, drawn in its plane: tail along x with its tip at 0
 * and its axis at height d/2, the bend at tail + B, the seat S further on, turned up by the bend; the rim square to that.
 */
function elbow(bend: number, S: number, B: number, T: number, d: number, W: number): Readings {
  const along = T + B + S * Math.cos(radians(bend));
  const up = d / 2 + S * Math.sin(radians(bend));
  const [x, y] = [(W / 2) * Math.sin(radians(bend)), (W / 2) * Math.cos(radians(bend))];
  return {
    soldAngle: bend,
    tipToInside: along - x,
    tipToOutside: along + x,
    heightInside: up + y,
    heightOutside: up - y,
    tailDiameter: d,
    tailLength: T,
    rimDiameter: W,
    seatLeg: S,
    hoseLeg: B,
  };
}

const without = (readings: Readings, ...keys: string[]): Readings =>
  Object.fromEntries(Object.entries(readings).filter(([key]) => !keys.includes(key)));

describe('a straight end', () => {
  it('C = A - T; assembled C = M - I, by hand 46 - 21.5 = 24.5 and 50 - 25.5 = 24.5', () => {
    const loose = measureEnd('straight', { seatToTip: 46, tailLength: 21.5 });
    expect(loose.end).toEqual({ bendAngleDeg: 0, cutOffMm: 24.5, dropMm: 0, seatToBendMm: 0, bendToShoulderMm: 24.5 });
    expect(loose.checks).toEqual([]);
    const assembled = measureEnd('straight', { seatToMouth: 50, insertion: 25.5 });
    expect(assembled.end).toMatchObject({ cutOffMm: 24.5, shoulderToMouthMm: 25.5 });
    const both = measureEnd('straight', { seatToTip: 46, tailLength: 21.5, seatToMouth: 50.4, insertion: 25.5 });
    expect(both.checks.map(({ what, agrees }) => [what, agrees])).toEqual([['C', true]]);
    expect(both.again).toEqual([]);
  });

  it('read two ways that differ by more than a millimetre: every reading of them again', () => {
    const off = measureEnd('straight', { seatToTip: 46, tailLength: 21.5, seatToMouth: 52, insertion: 25.5 });
    expect(off.again).toEqual(['seatToTip', 'tailLength', 'seatToMouth', 'insertion']);
    expect(off.checks[0]?.figures).toEqual([24.5, 26.5]);
  });
});

describe('an elbow', () => {
  // Drawn on paper: S 20 sqrt 2 at 45 degrees is 20 along and 20 up.
  it('45 degrees, legs 28.28 and 20: C 40, drop 20', () => {
    const { end, checks, again } = measureEnd('elbow', elbow(45, 20 * Math.SQRT2, 20, 22, 11, 14));
    expect(end?.cutOffMm).toBeCloseTo(40, 9);
    expect(end?.dropMm).toBeCloseTo(20, 9);
    expect(end?.seatToBendMm).toBeCloseTo(20 * Math.SQRT2, 9);
    expect(end?.bendToShoulderMm).toBeCloseTo(20, 9);
    expect(checks.map(({ what, agrees }) => [what, agrees])).toEqual([
      ['bend', true],
      ['rim', true],
      ['drop', true],
      ['C', true],
    ]);
    expect(again).toEqual([]);
  });

  it('of any bend gives back its legs, and its row agrees with itself', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 200; i++) {
      const bend = 15 + random() * 150;
      const [S, B] = [10 + 60 * random(), 10 + 60 * random()];
      const { end, checks } = measureEnd('elbow', elbow(bend, S, B, 22, 11, 8 + 12 * random()));
      expect(end?.seatToBendMm).toBeCloseTo(S, 6);
      expect(end?.bendToShoulderMm).toBeCloseTo(B, 6);
      expect(checks.every(({ agrees }) => agrees)).toBe(true);
      const { seatToBendMm: _s, bendToShoulderMm: _b, ...bare } = sampleEnd();
      const row = { ...bare, bendAngleDeg: bend, cutOffMm: end?.cutOffMm ?? 0, dropMm: end?.dropMm ?? 0 };
      const complete = completeEnd(row);
      expect(complete && [cutOffMm(complete), dropMm(complete)]).toEqual([
        expect.closeTo(row.cutOffMm, 6),
        expect.closeTo(row.dropMm, 6),
      ]);
    }
  });

  test.each([
    ['heightInside', 4],
    ['heightOutside', -4],
    ['tipToInside', 4],
    ['tipToOutside', 4],
    ['tailDiameter', 4],
    ['tailLength', 3],
    ['rimDiameter', 2],
    ['hoseLeg', 4],
  ])('a slip in %s alone by %d mm: that one is among the readings to take again, and few with it', (key, slip) => {
    const true45 = elbow(45, 30, 20, 22, 11, 14);
    const { again } = measureEnd('elbow', { ...true45, [key]: (true45[key] ?? 0) + slip });
    expect(again).toContain(key);
    expect(again.length).toBeLessThanOrEqual(4);
  });

  it('sold as 60 and bent 45: the bend is said, and that the angle is to be looked at', () => {
    const { checks, again } = measureEnd('elbow', { ...elbow(45, 30, 20, 22, 11, 14), soldAngle: 60 });
    expect(checks.find(({ what }) => what === 'bend')).toMatchObject({ agrees: false, unit: 'deg' });
    expect(checks.find(({ what }) => what === 'bend')?.figures[0]).toBeCloseTo(45, 9);
    expect(again).toContain('soldAngle');
  });

  it('without second readings is measured all the same, against the bend alone', () => {
    const few = without(elbow(90, 28, 33, 22, 11, 14), 'rimDiameter', 'seatLeg', 'hoseLeg');
    const { end, checks } = measureEnd('elbow', few);
    expect(end?.cutOffMm).toBeCloseTo(33, 9);
    expect(end?.dropMm).toBeCloseTo(28, 9);
    expect(checks.map(({ what }) => what)).toEqual(['bend']);
  });

  it('names what is still to be read', () => {
    expect(measureEnd('elbow', { soldAngle: 90, tailLength: 22 })).toEqual({
      missing: ['tipToInside', 'tipToOutside', 'heightInside', 'heightOutside', 'tailDiameter'],
      checks: [],
      again: [],
    });
  });

  it('whose drop comes out below nothing was read wrong', () => {
    const wrong = { ...elbow(45, 30, 20, 22, 11, 14), heightInside: 1, heightOutside: 1 };
    expect(measureEnd('elbow', wrong).checks.some(({ what }) => what === 'sense')).toBe(true);
  });
});

describe('a half turn', () => {
  // Legs 44 apart, tubes 12 and 10 thick, the seat 18 and the shoulder 26 below where the bend ends, tail 22.
  const half: Readings = {
    overLegs: 44 + 6 + 5,
    tailDiameter: 12,
    legDiameter: 10,
    crownToSeat: 18 + 22 + 5,
    crownToTip: 26 + 22 + 22 + 5,
    tailLength: 22,
    gap: 44 - 6 - 5,
    seatToTip: 26 + 22 - 18,
  };

  it('gives its two lengths, its drop from axis to axis, C = 26 - 18', () => {
    const { end, checks } = measureEnd('half-turn', half);
    expect(end).toEqual({ bendAngleDeg: 180, cutOffMm: 8, dropMm: 44, seatToBendMm: 18, bendToShoulderMm: 26 });
    expect(checks.map(({ what, agrees }) => [what, agrees])).toEqual([
      ['drop', true],
      ['legs', true],
    ]);
    expect(cutOffMm({ ...sampleEnd(), ...end })).toBeCloseTo(8, 9);
  });

  test.each([
    ['gap', ['overLegs', 'tailDiameter', 'legDiameter', 'gap']],
    ['seatToTip', ['crownToTip', 'crownToSeat', 'seatToTip']],
  ])('a slip in %s', (key, again) => {
    expect(measureEnd('half-turn', { ...half, [key]: (half[key] ?? 0) + 2 }).again).toEqual(again);
  });

  it('a seat that would lie in the bend was read wrong', () => {
    const { checks } = measureEnd('half-turn', { ...without(half, 'seatToTip'), crownToSeat: 20 });
    expect(checks.find(({ what }) => what === 'sense')?.figures).toEqual([-7, 0]);
  });
});

describe('a banjo', () => {
  // Eye 22 across and 9 thick with a hole of 12.2, its middle 40 from the shoulder, tail 18.
  const banjo: Readings = {
    farEdgeToTip: 11 + 40 + 18,
    eyeDiameter: 22,
    eyeThickness: 9,
    tailLength: 18,
    holeToTip: 40 + 18 - 6.1,
    holeDiameter: 12.2,
    tailTop: 4.5 + 5,
    tailDiameter: 10,
  };

  it('C from the middle of the eye, drop half its thickness, at a right angle', () => {
    const { end, checks } = measureEnd('banjo', banjo);
    expect(end).toEqual({
      form: 'banjo',
      bendAngleDeg: 90,
      cutOffMm: 40,
      dropMm: 4.5,
      seatToBendMm: 4.5,
      bendToShoulderMm: 40,
    });
    expect(checks.every(({ agrees }) => agrees) && checks.length).toBe(2);
  });

  it('whose neck is not in the middle of its eye is told', () => {
    const { checks, again } = measureEnd('banjo', { ...banjo, tailTop: 12 });
    expect(checks.map(({ what, agrees }) => [what, agrees])).toEqual([
      ['C', true],
      ['drop', false],
    ]);
    expect(again).toEqual(['eyeThickness', 'tailTop', 'tailDiameter']);
  });
});

describe('a square flange elbow', () => {
  // Flange 38 across, its middle 50 from the shoulder along the plate, tail axis 31 above it.
  const flange: Readings = {
    farEdgeToTip: 19 + 50 + 20,
    flangeAcross: 38,
    tailTop: 31 + 8,
    tailDiameter: 16,
    tailLength: 20,
    tailTopInner: 39,
    betweenTops: 30,
  };

  it('C along the plate, drop from the plate to the axis of the tail', () => {
    const { end, checks } = measureEnd('flange', flange);
    expect(end).toMatchObject({ form: 'flange', bendAngleDeg: 90, cutOffMm: 50, dropMm: 31 });
    expect(checks.map(({ figures }) => figures)).toEqual([[90, 90]]);
  });

  it('whose tail rises by 30 mm in 30 is an elbow of 45 degrees, and said to be none of 90', () => {
    const { checks } = measureEnd('flange', { ...flange, tailTopInner: 9 });
    expect(checks[0]?.agrees).toBe(false);
    expect(checks[0]?.figures[0]).toBeCloseTo(45, 9);
  });
});

it('has for each kind readings with letters of their own, every needed one needed', () => {
  for (const kind of MEASURE_KINDS) {
    const letters = READINGS[kind].map(({ letter }) => letter);
    expect(new Set(letters).size).toBe(letters.length);
    const all = READINGS[kind].map(({ key }) => [key, 10] as const);
    expect(measureEnd(kind, Object.fromEntries(all)).missing).toEqual([]);
    if (kind === 'straight') continue;
    for (const { key } of READINGS[kind].filter(({ need }) => need === 'needed'))
      expect(measureEnd(kind, Object.fromEntries(all.filter(([other]) => other !== key))).missing).toEqual([key]);
  }
});
