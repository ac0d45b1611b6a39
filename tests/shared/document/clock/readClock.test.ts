import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { degreesApart } from '../../../../shared/base/units.ts';
import { readClock } from '../../../../shared/document/clock/readClock.ts';
import { CLOCK_DIALECTS } from '../../../../shared/document/project/schema.ts';
import { clockSentence } from '../../../../shared/sheets/clock/clockWords.ts';
import { DIALECT_WORDS, dialectSentence } from '../../../../shared/sheets/format/index.ts';

function shapes(text: string): number[] {
  const read = readClock(text);
  if (!read.ok) throw new Error(`${text}: ${read.message}`);
  return read.shapes.map((shape) => shape.clockDeg);
}

describe('one hose, where the note says which way and from which end', () => {
  it.each([
    // MIL-DTL-83796/5 Fig. 3 note 1: near at six, counter-clockwise to the far one.
    ["near at 6 o'clock, counter-clockwise 270 to the far end", 270],
    ['near to far, anti-clockwise, 225°', 225],
    ['225 near to far clockwise', 135],
    // Hydraulic maker and hose shop: far to near, clockwise. Same number.
    ['225 far to near clockwise', 225],
    ['far to near, CCW 90', 270],
    ['90 cw from the furthest fitting to the nearest', 90],
    // Far at twelve; near told on the clock face: story 4 of the trade reads 9 o'clock for 270.
    ["far at 12 o'clock, near at 9 o'clock", 270],
    ['far at 12, near at 3', 90],
    ["far at 12 o'clock, near at 9:30 o'clock", 285],
    // The sign test of published-values 3.3: near down, far at 3 o'clock = 90; far at 9 o'clock = 270.
    ["near at 6 o'clock, far at 3 o'clock", 90],
    ["near at 6 o'clock, far at 9 o'clock", 270],
    // Part code of MIL-DTL-83796/5 note 4: 50 degrees = 10, 30 degrees = 06.
    ['MIL code 10', 50],
    ['code 06', 30],
    ["Look from END B along the hose to END A: END B at 3 o'clock, END A at 12 o'clock", 90],
  ])('%s', (text, deg) => {
    expect(shapes(text)).toHaveLength(1);
    expect(degreesApart(shapes(text)[0]!, deg)).toBeLessThan(1e-9);
  });
});

describe('two hoses, where it does not', () => {
  it.each([
    ['V225', [225, 135]],
    ['@60', [60, 300]],
    ['60', [60, 300]],
    ['90,5 deg', [90.5, 269.5]],
    ['clockwise 90', [90, 270]],
    ['fitting 1 vertical up; clockwise to fitting 2: 225', [225, 135]],
    // A real wording that allows either direction (trade: C4).
    ['far elbow vertical, measured from the closest fitting at a clockwise rotation, 90', [90, 270]],
    ['END A to END B counter-clockwise 90', [90, 270]],
    ['from near clockwise 40', [40, 320]],
  ])('%s', (text, both) => {
    expect(shapes(text)).toEqual(both);
  });

  it.each(['0', '180', '@360', 'V180'])('%s is the same both ways', (text) => {
    expect(shapes(text)).toHaveLength(1);
  });
});

it.each([
  ['', 'expected an angle'],
  ['straight', 'expected an angle'],
  ['400', 'from 0 to 360'],
  ['-90', 'without a sign'],
  ['90 or 270', 'one angle'],
  ['code 75', 'from 00 to 71'],
  ["far at 12 o'clock, near at 14 o'clock", 'from 1 to 12'],
  ["near at 6 o'clock, far at 3 o'clock, 100 far to near clockwise", 'contradicts itself'],
  ["near at 6 o'clock, near at 7 o'clock, far at 3 o'clock", 'two positions'],
])('refuses %j', (text, words) => {
  const read = readClock(text);
  expect(read.ok ? 'taken' : read.message).toContain(words);
});

it('reads back every dialect, and the card from both ends, as the same hose', () => {
  const random = seededRandom(11);
  const angles = [0, 90, 180, 270, 359.9, ...Array.from({ length: 300 }, () => Math.round(random() * 3600) / 10)];
  for (const deg of angles) {
    const sentences = [
      ...CLOCK_DIALECTS.map((dialect) => dialectSentence(deg, dialect)),
      clockSentence(deg, 'A'),
      clockSentence(deg, 'B'),
    ];
    for (const sentence of sentences) {
      expect(shapes(sentence), sentence).toHaveLength(1);
      expect(degreesApart(shapes(sentence)[0]!, deg), sentence).toBeLessThan(1e-6);
    }
  }
});

it('names every dialect', () => {
  expect(new Set(CLOCK_DIALECTS.map((dialect) => DIALECT_WORDS[dialect])).size).toBe(CLOCK_DIALECTS.length);
});
