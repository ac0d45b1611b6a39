import { describe, expect, test } from 'vitest';
import { degreesApart } from '../../shared/base/units.ts';
import { readClock } from '../../shared/document/clock/readClock.ts';
import { backwardsEnd } from '../../shared/document/lay/backwardsEnd.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { clockSentence } from '../../shared/sheets/clock/clockWords.ts';
import { wrapStrip } from '../../shared/sheets/clock/wrapStrip.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, findingsOf, layStory, type Story } from './storyBay.ts';

/** mm. 3.5 in to the inside of the bend, of a hose 15.7 mm thick: 96.75 mm at the centreline. */
const LIMIT_INSIDE_MM = 88.9;

/**
 * A cooler line between two 90 degree ends: 50 mm straight, a bend of the given radius, 100 mm straight, another bend square to
 * the first, 50 mm straight, held where line meets bend. C is 47 mm at both ends, so 3 mm of hose are straight before each bend.
 */
function story(radiusMm: number, more: Partial<Story['project']> = {}): Story {
  const x = 50 + radiusMm;
  const y = 2 * radiusMm + 100;
  return {
    blocks: [{ name: 'bench', min: [-200, -200, -400], max: [500, 600, -380] }],
    hoses: [exampleHose({ id: 'hose-8', minBendRadiusMm: LIMIT_INSIDE_MM })],
    ends: [exampleEnd(90, { id: 'elbow', turning: 'fixed' })],
    project: {
      ports: [
        { id: 'a', name: 'A', seatPoint: [0, 0, 30], axis: [0, 0, -1], up: [1, 0, 0], seat: 'flare-37', dash: 8 },
        {
          id: 'b',
          name: 'B',
          seatPoint: [x + 30, y, radiusMm + 50],
          axis: [-1, 0, 0],
          up: [0, 0, -1],
          seat: 'flare-37',
          dash: 8,
        },
      ],
      runs: [
        {
          id: 'line',
          name: 'Cooler line',
          a: { port: 'a', end: 'elbow', clockDeg: 0 },
          b: { port: 'b', end: 'elbow', clockDeg: 0 },
          service: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 110 },
          hose: 'hose-8',
          slack: 0,
          cutLengthMm: 200 + Math.PI * radiusMm - 2 * 47,
          supports: [
            { id: 'in-1', kind: 'clamp', point: [50, 0, 0], axis: [1, 0, 0] },
            { id: 'out-1', kind: 'clamp', point: [x, radiusMm, 0], axis: [0, 1, 0] },
            { id: 'in-2', kind: 'clamp', point: [x, radiusMm + 100, 0], axis: [0, 1, 0] },
            { id: 'out-2', kind: 'clamp', point: [x, y, radiusMm], axis: [0, 0, 1] },
          ],
        },
      ],
      ...more,
    },
  };
}

/** Between bends that are held the hose has no slack to give; the rest of the story is about bends and clock. */
const HELD: Partial<Story['project']> = {
  overrides: [
    { rule: 'slack-least', value: 0, reason: 'held all along' },
    { rule: 'breathing-shorter', value: 0, reason: 'held all along' },
  ],
};

describe('a cooler line between two elbows', () => {
  test('has the clock of the closed form, not the angle seen between the outlets in the bay', async () => {
    const [lay] = (await layStory(story(100, HELD))).lays as [Lay];
    expect(lay.clock.kind).toBe('angle');
    const deg = lay.clock.kind === 'angle' ? lay.clock.deg : Number.NaN;
    // The outlets stand at 90 degrees to each other in the bay; twist-free along the hose it is 270.
    expect(degreesApart(deg, 270)).toBeLessThan(0.5);
    // up to 24 in: 3 degrees (MIL-DTL-83796/5)
    expect(lay.clock).toMatchObject({ toleranceDeg: 3 });
    expect(lay.cutLengthMm).toBeCloseTo(420.159, 2);
    expect(lay.overallLengthMm).toBeCloseTo(514.159, 2);
    expect(clockSentence(270, 'A')).toContain("The outlet of END A then points to 9 o'clock");
    const backwards = backwardsEnd(lay);
    expect(backwards?.turnedDeg).toBeCloseTo(180, 0);
  });

  test('a bare V is two hoses, and neither is taken', () => {
    const read = readClock('V270');
    expect(read.ok && read.shapes.map(({ clockDeg }) => clockDeg).sort((p, q) => p - q)).toEqual([90, 270]);
  });

  test('the wrap strip puts its lines 37.0 mm apart on 49.3 mm', () => {
    const strip = wrapStrip(15.7, 270);
    expect(strip.arcMm).toBeCloseTo(37, 1);
    expect(strip.circumferenceMm).toBeCloseTo(49.3, 1);
  });

  test('3 mm of straight hose before the bends is looked at; beside it only that a hose held all along has no length to spare', async () => {
    const report = await layStory(story(100, HELD));
    const [tail] = findingsOf(report, 'straightTail');
    expect(tail?.severity).toBe('look');
    expect(tail?.measured).toBeCloseTo(3, 1);
    expect(aboveNote(report).filter((text) => !/straightTail|slack|tolerance/.test(text))).toEqual([]);
  });

  test('a bend of 100 mm passes: 92.1 mm inside; one of 92 mm looks larger than 88.9 and is not: 84.1 inside', async () => {
    expect(findingsOf(await layStory(story(100, HELD)), 'bendRadius')).toEqual([]);
    const [tight] = findingsOf(await layStory(story(92, HELD)), 'bendRadius');
    expect(tight?.severity).toBe('stop');
    // 92 to the centreline is 84.15 inside; the hose held at its clamps bends no gentler than that anywhere
    expect(tight?.limit).toBeCloseTo(LIMIT_INSIDE_MM + 15.7 / 2, 6);
    expect(tight?.measured).toBeLessThan(92.2);
  });
});
