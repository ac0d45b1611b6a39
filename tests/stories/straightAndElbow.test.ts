import { describe, expect, test } from 'vitest';
import { inchesToMm } from '../../shared/base/units.ts';
import { codedLength, readCodedLength } from '../../shared/document/length/codedLength.ts';
import { lengthTolerance } from '../../shared/document/rules/lengthTolerance.ts';
import { formatInches } from '../../shared/sheets/format/index.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, layStory, type Story } from './storyBay.ts';

/**
 * A straight end and an elbow, ordered the aircraft way: `0244`, from the flare of the straight end to the centreline of the
 * elbow. 24-4/8 in = 622.3 mm; C is 20 and 47 mm, so the hose is cut to 555.3 mm.
 */
const CUT_MM = 622.3 - 20 - 47;

const hose: Story = {
  blocks: [
    { name: 'plate-a', min: [-60, -60, -60], max: [-30, 60, 60] },
    { name: 'plate-b', min: [500, -60, -260], max: [660, 60, -230] },
  ],
  hoses: [exampleHose({ id: 'hose-8', minBendRadiusMm: 88.9 })],
  ends: [
    exampleEnd(0, { id: 'straight', seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 }),
    exampleEnd(90, { id: 'elbow', seatToBendMm: 30, bendToShoulderMm: 47, shoulderToMouthMm: 15 }),
  ],
  project: {
    ports: [
      { id: 'a', name: 'A', seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1], seat: 'flare-37', dash: 8 },
      { id: 'b', name: 'B', seatPoint: [566, 0, -180], axis: [0, 0, 1], up: [1, 0, 0], seat: 'flare-37', dash: 8 },
    ],
    runs: [
      {
        id: 'run',
        name: 'Run',
        a: { port: 'a', end: 'straight' },
        b: { port: 'b', end: 'elbow' },
        service: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 100 },
        hose: 'hose-8',
        slack: 0.05,
        cutLengthMm: CUT_MM,
        supports: [],
      },
    ],
  },
};

describe('a hose with a straight end and an elbow, ordered as 0244', () => {
  test('cut to 555.3 mm lies well, and is 0244 from flare to centreline', async () => {
    const report = await layStory(hose);
    const [lay] = report.lays;
    expect(lay?.outcome).toBe('laid');
    expect(aboveNote(report)).toEqual([]);
    const named = lay?.lengths?.find(({ convention }) => convention === 'flare-to-flare');
    expect(named?.lengthMm).toBeCloseTo(inchesToMm(24.5), 2);
    // The sentence without which the number is not one: which point of which end it is measured to.
    expect(named?.datum).toEqual({ a: 'flare', b: 'centreline' });
    expect(codedLength(named?.lengthMm as number, 'eighths')).toMatchObject({
      code: '0244',
      words: '0244 in inches and eighths = 24-4/8 in',
    });
  });

  test('is 21-7/8 in to the saw, give or take 3/16 in', () => {
    expect(formatInches(CUT_MM, 'nearest')).toBe('21 7/8 in');
    // RMA IP-2 table 4-8: over 12 to 24 in, 3/16 in; a smooth core
    expect(lengthTolerance(CUT_MM, 'ptfe-smooth')).toMatchObject({ toleranceMm: inchesToMm(3 / 16), applies: true });
  });

  test('0244 is never read as one thing alone', () => {
    expect(readCodedLength('0244').map(({ mm }) => mm)).toEqual([inchesToMm(24.5), inchesToMm(2.44)]);
  });

  test.each([
    ['24.4 in instead of 24-4/8', inchesToMm(24.4) - 20 - 47, -2.54],
    ['from the reach of a nut 3 mm past the flare', CUT_MM - 3, -3],
    ['as the hose itself', 622.3, 67],
  ])('cut by a wrong reading, %s, it is off by what the two conventions differ', (_, cutMm, offMm) => {
    expect(cutMm - CUT_MM).toBeCloseTo(offMm, 6);
  });

  test('cut as long as the whole assembly it is told to be sloppy', async () => {
    const [run] = hose.project.runs;
    const report = await layStory({ ...hose, project: { ...hose.project, runs: [{ ...run!, cutLengthMm: 622.3 }] } });
    expect(report.findings.some(({ check, severity }) => check === 'slack' && severity !== 'note')).toBe(true);
  });
});
