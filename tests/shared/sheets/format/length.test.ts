import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import {
  formatClearance,
  formatCutLength,
  formatInches,
  formatLengthBoth,
  formatMm,
  formatNumber,
  formatRadius,
  formatSlack,
} from '../../../../shared/sheets/format/index.ts';

const MM_PER_INCH = 25.4;
/** mm. What may be lost to the wrong side: a ten-thousandth of the coarsest step printed, 1/16 in. */
const NOISE_MM = 1.6e-4;

/** The length that a reader takes from print, in mm; written apart from the formatter. */
function readInches(text: string): number {
  const match = /^(-?)(?:(\d+) )?(\d+)(?:\/(\d+))? in$/.exec(text);
  if (!match) throw new Error(`not an inch length: ${text}`);
  const [, sign, whole, top, bottom] = match;
  const inches = Number(whole ?? 0) + Number(top) / Number(bottom ?? 1);
  return (sign === '-' ? -1 : 1) * inches * MM_PER_INCH;
}

describe('known lengths', () => {
  test('story 5: 0244 in eighths is 24 4/8 in, 622.3 mm, and cuts to 21 7/8 in', () => {
    expect(formatInches(622.3)).toBe('24 1/2 in');
    expect(formatInches(555.3, 'nearest')).toBe('21 7/8 in');
  });
  test('story 4: 420.159 mm is cut at 420.2 mm, 16 9/16 in', () => {
    expect(formatCutLength(420.159)).toBe('420.2 mm (16 9/16 in)');
  });
  test('a length that is a sixteenth stays that sixteenth, however it was reached', () => {
    for (let n = 0; n < 3000; n++) {
      const mm = (n / 16) * MM_PER_INCH;
      expect(readInches(formatInches(mm, 'up'))).toBeCloseTo(mm, 9);
      expect(readInches(formatInches((n * MM_PER_INCH) / 16, 'down'))).toBeCloseTo(mm, 9);
    }
    expect(formatInches(24.375 * 25.4, 'up')).toBe('24 3/8 in');
    expect(formatMm(0.1 + 0.2, 'up')).toBe('0.3 mm');
  });
  test('noise of a solver is no step: no slack prints as none, not as less', () => {
    expect(formatSlack(-3.7e-9)).toBe('0.0 %');
    expect(formatSlack(0.05 - 1e-9)).toBe('5.0 %');
    expect(formatSlack(0.0499)).toBe('4.9 %');
  });
  test('whole inches carry no fraction, small ones no whole', () => {
    expect(formatInches(0)).toBe('0 in');
    expect(formatInches(25.4 * 3)).toBe('3 in');
    expect(formatInches(25.4 / 4)).toBe('1/4 in');
    expect(formatInches(25.4 / 32, 'nearest', 32)).toBe('1/32 in');
  });
  test('a clearance below zero gets worse in print, never better', () => {
    expect(formatClearance(-0.31)).toBe('-0.4 mm (-1/32 in)');
    expect(formatMm(-0.01)).toBe('0.0 mm');
  });
  test('a number that is none is our own mistake', () => {
    expect(() => formatNumber(Number.NaN, 1)).toThrow('formatNumber');
    expect(() => formatInches(Number.POSITIVE_INFINITY)).toThrow('formatInches');
  });
});

describe('rounding never crosses to the unsafe side', () => {
  const random = seededRandom(20260311);
  const lengths = Array.from({ length: 20_000 }, () => (random() < 0.5 ? random() * 50 : random() * 3000));

  test('cut length: printed long by less than 0.1 mm and less than 1/16 in', () => {
    const over = lengths.map((mm) => splitBoth(formatCutLength(mm)).map((printed) => printed - mm));
    expectWithin(
      over.map((o) => o[0]!),
      0,
      0.1,
    );
    expectWithin(
      over.map((o) => o[1]!),
      0,
      MM_PER_INCH / 16,
    );
  });
  test('clearance and radius: printed short by less than one step', () => {
    for (const [format, stepIn] of [
      [formatClearance, 1 / 32],
      [formatRadius, 1 / 16],
    ] as const) {
      const under = lengths.map((mm) => splitBoth(format(mm)).map((printed) => mm - printed));
      expectWithin(
        under.map((u) => u[0]!),
        0,
        0.1,
      );
      expectWithin(
        under.map((u) => u[1]!),
        0,
        stepIn * MM_PER_INCH,
      );
    }
  });
  test('nearest: within half a step', () => {
    const off = lengths.map((mm) => splitBoth(formatLengthBoth(mm)).map((printed) => printed - mm));
    expectWithin(
      off.map((o) => o[0]!),
      -0.05,
      0.05,
    );
    expectWithin(
      off.map((o) => o[1]!),
      -MM_PER_INCH / 32,
      MM_PER_INCH / 32,
    );
  });
});

function expectWithin(values: readonly number[], low: number, high: number): void {
  expect(values.length).toBeGreaterThan(0);
  expect(Math.min(...values)).toBeGreaterThanOrEqual(low - NOISE_MM);
  expect(Math.max(...values)).toBeLessThanOrEqual(high + NOISE_MM);
}

function splitBoth(text: string): [number, number] {
  const match = /^(-?[\d.]+) mm \((.*)\)$/.exec(text);
  if (!match) throw new Error(`not in both units: ${text}`);
  return [Number(match[1]), readInches(match[2] ?? '')];
}
