import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { inchesToMm } from '../../../../shared/base/units.ts';
import { lengthsOf } from '../../../../shared/document/lay/lengthsOf.ts';
import type { LengthConvention, NamedLength } from '../../../../shared/document/lay/schema.ts';
import { cutOffMm } from '../../../../shared/document/parts/cutOff.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { lengthTolerance } from '../../../../shared/document/rules/lengthTolerance.ts';
import { conventionName } from '../../../../shared/document/wording/lengthWords.ts';
import { formatCutLength } from '../../../../shared/sheets/format/index.ts';
import { ELBOW_8, STRAIGHT_10 } from '../../../arbitraries/reports.ts';

const STRAIGHT: End = { ...STRAIGHT_10, seatToBendMm: 8, bendToShoulderMm: 12, shoulderToMouthMm: 24, nutReachMm: 3 };
const BANJO: End = { ...ELBOW_8, form: 'banjo', turning: 'fixed' };

function byConvention(lengths: readonly NamedLength[]): Partial<Record<LengthConvention, NamedLength>> {
  return Object.fromEntries(lengths.map((length) => [length.convention, length]));
}

describe('which conventions apply', () => {
  it.each([
    ['two straight flares', STRAIGHT, STRAIGHT, ['flare-to-flare', 'end-of-nut']],
    ['straight and elbow', STRAIGHT, ELBOW_8, ['flare-to-flare', 'elbow-centreline', 'end-of-nut']],
    ['two elbows', ELBOW_8, ELBOW_8, ['elbow-centreline']],
    ['two banjos', BANJO, BANJO, ['banjo-eye']],
    ['banjo and elbow', BANJO, ELBOW_8, ['elbow-centreline', 'banjo-eye']],
    ['two male ends', { ...STRAIGHT, form: 'male' as const }, { ...STRAIGHT, form: 'male' as const }, []],
    ['a straight nut without a flare', { ...STRAIGHT, seat: 'bspp' }, STRAIGHT, ['end-of-nut']],
  ])('%s', (_name, a, b, more) => {
    const found = lengthsOf({ cutLengthMm: 500, a, b }).map((length) => length.convention);
    expect(found).toEqual(['shoulder-to-shoulder', 'mouth-to-mouth', 'seat-to-seat', ...more]);
  });
});

it('story 5: ordered 0244, flare to elbow centreline 622.3 mm, C 20 and 47, cut 555.3 mm', () => {
  const a: End = { ...STRAIGHT, seatToBendMm: 8, bendToShoulderMm: 12 };
  const b: End = { ...ELBOW_8, seatToBendMm: 30, bendToShoulderMm: 47 };
  const { 'flare-to-flare': flare, 'end-of-nut': nut } = byConvention(lengthsOf({ cutLengthMm: 555.3, a, b }));
  expect(flare?.lengthMm).toBeCloseTo(inchesToMm(24.5), 9);
  expect(flare?.addedMm?.a).toBeCloseTo(20, 9);
  expect(flare?.addedMm?.b).toBeCloseTo(47, 9);
  expect(conventionName('flare-to-flare', flare!.datum)).toBe('Flare to centreline');
  expect(flare?.to).toBe('the seat centreline of END B');
  // On paper: 555.3 mm is 21-7/8 in, +/- 3/16 in.
  expect(formatCutLength(555.3)).toBe('555.3 mm (21 7/8 in)');
  expect(lengthTolerance(555.3, 'ptfe-smooth').toleranceMm).toBeCloseTo(inchesToMm(3 / 16), 9);
  // "nut-to-nut: 3 mm a nut" and "as hose length: + 67 mm" are the traps of the story.
  expect(flare!.lengthMm! - 555.3).toBeCloseTo(67, 9);
  expect(nut!.lengthMm! - flare!.lengthMm!).toBeCloseTo(3, 9);
});

it('story 4: two elbows with C 47, overall 514.2 centreline to centreline, cut 420.2', () => {
  const found = byConvention(lengthsOf({ cutLengthMm: 420.159, a: ELBOW_8, b: ELBOW_8 }));
  expect(found['elbow-centreline']?.lengthMm).toBeCloseTo(514.159, 9);
  expect(found['seat-to-seat']?.lengthMm).toBeCloseTo(514.159, 9);
  expect(found['shoulder-to-shoulder']?.lengthMm).toBe(420.159);
  expect(found['mouth-to-mouth']?.lengthMm).toBeCloseTo(420.159 - 44, 9);
});

it('names the missing figure instead of a number', () => {
  const { nutReachMm: _gone, ...bare } = STRAIGHT;
  const found = byConvention(lengthsOf({ cutLengthMm: 500, a: STRAIGHT, b: bare }))['end-of-nut'];
  expect(found).not.toHaveProperty('lengthMm');
  expect(found?.missing).toEqual(['how far the nut of END B reaches past its seat (nut_reach_mm)']);
});

it('tells where the trade is of two minds: male ends, bent flanges', () => {
  const male = lengthsOf({ cutLengthMm: 500, a: { ...STRAIGHT, form: 'male' }, b: STRAIGHT });
  expect(byConvention(male)['seat-to-seat']?.notes?.[0]).toContain('end of the thread');
  const flange = lengthsOf({ cutLengthMm: 500, a: { ...ELBOW_8, form: 'flange', bendAngleDeg: 45 }, b: STRAIGHT });
  expect(byConvention(flange)['seat-to-seat']?.notes?.[0]).toContain('front edge');
});

it('turned round, every length is the same with its ends changed', () => {
  const random = seededRandom(3);
  for (let i = 0; i < 100; i++) {
    const end = (): End => ({
      ...(random() < 0.5 ? STRAIGHT : ELBOW_8),
      bendAngleDeg: random() < 0.4 ? 0 : Math.round(random() * 170),
      seatToBendMm: random() * 60,
      bendToShoulderMm: random() * 60,
      ...(random() < 0.3 ? { form: 'banjo' as const } : {}),
    });
    const [a, b] = [end(), end()];
    const there = byConvention(lengthsOf({ cutLengthMm: 400, a, b }));
    const back = byConvention(lengthsOf({ cutLengthMm: 400, a: b, b: a }));
    expect(Object.keys(back).sort()).toEqual(Object.keys(there).sort());
    for (const [convention, length] of Object.entries(there)) {
      const other = back[convention as LengthConvention]!;
      expect(other.datum).toEqual({ a: length.datum.b, b: length.datum.a });
      if (length.lengthMm !== undefined) expect(other.lengthMm).toBeCloseTo(length.lengthMm, 9);
    }
    expect(there['seat-to-seat']?.lengthMm).toBeCloseTo(400 + cutOffMm(a) + cutOffMm(b), 9);
  }
});
