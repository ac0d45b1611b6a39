import { describe, expect, test } from 'vitest';
import type { Bay, Run } from '../../shared/document/project/schema.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, type Block, findingsOf, layStory, type Story } from './storyBay.ts';

const END = { dash: 10, shoulderToMouthMm: 12, collarDiameterMm: 26, boreMm: 14.5 } as const;
/** Flange to pan: 210 mm down, 120 across. */
const PAN_SEAT = [120, 0, -210] as const;
const CHORD_MM = Math.hypot(120, 210);
/** The pan's port looks along the chord, the turbo's outlet 14 degrees off straight down towards it. */
const PAN_AXIS: [number, number, number] = [-120 / CHORD_MM, 0, 210 / CHORD_MM];
const OUTLET: [number, number, number] = [Math.sin((14 * Math.PI) / 180), 0, -Math.cos((14 * Math.PI) / 180)];
/** 60 mm behind the middle of the sump; the surface lies 45 mm under the port. */
const OIL: [number, number, number] = [60, 0, -255];

const drain: Run = {
  id: 'drain',
  name: 'Turbo oil drain',
  a: { port: 'turbo', end: 'straight' },
  b: { port: 'pan', end: 'straight' },
  service: { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 110, flowLPerMin: 1.5 },
  hose: 'hose-10',
  slack: 0.05,
  supports: [],
};

function story(changes: Partial<Run> = {}, bay: Partial<Bay> = {}, exhaust: readonly Block[] = []): Story {
  return {
    blocks: [
      { name: 'turbo', min: [-50, -50, 25], max: [50, 50, 125] },
      { name: 'pan', min: [60, -80, -400], max: [180, 80, PAN_SEAT[2] - 20] },
      ...exhaust,
    ],
    hoses: [
      exampleHose({
        id: 'hose-10',
        dash: 10,
        insideDiameterMm: 14.5,
        outsideDiameterMm: 20,
        minBendRadiusMm: 18,
        maxTemperatureC: 230,
      }),
    ],
    ends: [
      exampleEnd(0, { ...END, id: 'straight', seatToBendMm: 0, bendToShoulderMm: 22 }),
      exampleEnd(90, { ...END, id: 'elbow', seatToBendMm: 30, bendToShoulderMm: 35 }),
    ],
    bay: {
      oilLevel: OIL,
      skins: [{ id: 'exhaust', name: 'Exhaust', kind: 'hot', parts: ['exhaust*'], surfaceTemperatureC: 500 }],
      ...bay,
    },
    project: {
      ports: [
        {
          id: 'turbo',
          name: 'Turbo',
          seatPoint: [0, 0, 0],
          axis: OUTLET,
          up: [0, 1, 0],
          seat: 'flare-37',
          dash: 10,
        },
        {
          id: 'pan',
          name: 'Pan',
          seatPoint: [...PAN_SEAT],
          axis: PAN_AXIS,
          up: [0, 1, 0],
          seat: 'flare-37',
          dash: 10,
        },
      ],
      runs: [{ ...drain, ...changes }],
    },
  };
}

describe('a turbo drain to a port in the pan', () => {
  test('with two straight ends it falls all the way; that it leans 29.7 degrees is a note with both statements', async () => {
    const report = await layStory(story());
    expect(report.lays[0]?.outcome).toBe('laid');
    expect(aboveNote(report)).toEqual([]);
    const [lean] = findingsOf(report, 'drainLean');
    // atan(120/210)
    expect(lean?.measured).toBeCloseTo(29.74, 1);
    expect(lean?.message).toMatch(/15\.0 degrees of one note.*within the 35\.0 degrees of another.*inference/);
  });

  test('a hose held too low before the pan dips, and is stopped', async () => {
    const report = await layStory(
      story({
        supports: [
          { id: 'low', kind: 'waypoint', point: [60, 0, -160] },
          { id: 'high', kind: 'waypoint', point: [120, 0, -120] },
        ],
      }),
    );
    expect(findingsOf(report, 'drainFall')[0]).toMatchObject({ severity: 'stop', rule: 'drain-no-rise' });
  });

  test('an elbow on the drain is looked at', async () => {
    const report = await layStory(story({ a: { port: 'turbo', end: 'elbow' } }));
    expect(findingsOf(report, 'turboDrainEnds')[0]).toMatchObject({ severity: 'look', rule: 'drain-end-angle' });
  });

  test('12 mm under the oil on braking it is stopped, though clear of it at rest', async () => {
    // Height of the seat over the turned plane, less the radius of a -10 by the sine between its axis and up.
    const g = -0.983;
    const up = [g / Math.hypot(g, 1), 1 / Math.hypot(g, 1)] as const;
    const along = PAN_AXIS[0] * up[0] + PAN_AXIS[2] * up[1];
    const expected = 60 * up[0] + 45 * up[1] - 7.9375 * Math.sqrt(1 - along ** 2);
    expect(expected).toBeCloseTo(-12, 1);
    const braking = { name: 'braking', gradeDeg: { x: 0, y: 0 }, accelerationG: { x: g, y: 0 } };
    const report = await layStory(story({}, { attitudes: [braking] }));
    const [under] = findingsOf(report, 'drainEntry');
    expect(under).toMatchObject({ severity: 'stop', rule: 'drain-above-oil-leaning' });
    expect(under?.measured).toBeCloseTo(expected, 6);
    expect(under?.message).toContain('braking');
    const gentle = { ...braking, accelerationG: { x: -0.6, y: 0 } };
    expect(findingsOf(await layStory(story({}, { attitudes: [gentle] })), 'drainEntry')).toEqual([]);
  });

  test('between exhaust pipes that leave it 68 mm at most it is stopped', async () => {
    // 78 mm to either side of the ports, less the hose's radius of 10
    const report = await layStory(
      story({}, {}, [
        { name: 'exhaust', min: [-150, 78, -230], max: [250, 90, 20] },
        { name: 'exhaust-far', min: [-150, -90, -230], max: [250, -78, 20] },
      ]),
    );
    const stop = report.findings.find((f) => f.severity === 'stop' && f.with?.id === 'exhaust');
    expect(stop?.limit).toBeCloseTo(76.2, 6);
    expect(stop?.measured).toBeLessThanOrEqual(68.1);
  });
});
