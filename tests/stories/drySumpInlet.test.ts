import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Run } from '../../shared/document/project/schema.ts';
import { motionAbout } from '../arbitraries/motions.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, type Block, findingsOf, layStory, type Story } from './storyBay.ts';

const END = { dash: 16, shoulderToMouthMm: 15, collarDiameterMm: 38 } as const;
const MOUTH_MM = 40;
/** From mouth to mouth 480 mm as the crow flies: 398 mm along, 268 mm down. */
const PUMP_SEAT: Vec3 = [MOUTH_MM + 398, 0, -268 - MOUTH_MM];
/** The engine rocks 3 degrees about an axis 350 mm from the pump's mouth, square to the chord: 18.3 mm to and fro. */
const PIVOT: Vec3 = [PUMP_SEAT[0] - (350 * 268) / 480, 0, PUMP_SEAT[2] + MOUTH_MM - (350 * 398) / 480];

const inlet: Run = {
  id: 'inlet',
  name: 'Pump inlet',
  a: { port: 'tank', end: 'straight' },
  b: { port: 'pump', end: 'straight' },
  service: { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -20, temperatureC: 100, flowLPerMin: 45 },
  hose: 'hose-16',
  slack: 0.07,
  supports: [],
};

function story(changes: Partial<Run> = {}, header?: Block): Story {
  return {
    blocks: [
      { name: 'tank', min: [-200, -150, -150], max: [-30, 150, 150] },
      {
        name: 'pump',
        min: [PUMP_SEAT[0] - 60, -60, PUMP_SEAT[2] - 150],
        max: [PUMP_SEAT[0] + 60, 60, PUMP_SEAT[2] - 30],
      },
      ...(header === undefined ? [] : [header]),
    ],
    hoses: [
      exampleHose({
        id: 'hose-16',
        dash: 16,
        insideDiameterMm: 25.4,
        outsideDiameterMm: 30,
        minBendRadiusMm: 110,
        vacuumLimitKpa: -90,
      }),
      exampleHose({
        id: 'hose-14',
        dash: 16,
        insideDiameterMm: 22.2,
        outsideDiameterMm: 30,
        minBendRadiusMm: 110,
        vacuumLimitKpa: -90,
      }),
    ],
    ends: [
      exampleEnd(0, { ...END, id: 'straight', seatToBendMm: 0, bendToShoulderMm: 25 }),
      exampleEnd(90, { ...END, id: 'elbow', seatToBendMm: 45, bendToShoulderMm: 45 }),
      exampleEnd(0, { ...END, id: 'push-on', seatToBendMm: 0, bendToShoulderMm: 25, joint: 'push-on' }),
    ],
    bay: {
      bodies: [
        {
          id: 'engine',
          name: 'Engine',
          parts: ['pump', 'header'],
          motion: motionAbout([...PIVOT], { pitchDeg: [-3, 3] }),
        },
      ],
      skins: [{ id: 'header', name: 'Header', kind: 'hot', parts: ['header'], surfaceTemperatureC: 600 }],
    },
    project: {
      ports: [
        { id: 'tank', name: 'Tank', seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1], seat: 'flare-37', dash: 16 },
        {
          id: 'pump',
          name: 'Pump',
          seatPoint: [...PUMP_SEAT],
          axis: [0, 0, 1],
          up: [1, 0, 0],
          seat: 'flare-37',
          dash: 16,
          body: 'engine',
        },
      ],
      runs: [{ ...inlet, ...changes }],
    },
  };
}

describe('the inlet of a dry sump pump on an engine that rocks', () => {
  test('with hose enough for the rock it lies clean: at least 5 % over the chord and its travel', async () => {
    const report = await layStory(story());
    const [lay] = report.lays;
    expect(lay?.outcome).toBe('laid');
    expect(lay?.liveLengthMm).toBeGreaterThanOrEqual((480 + 350 * Math.sin((3 * Math.PI) / 180)) * 1.05);
    expect(aboveNote(report)).toEqual([]);
    // 45 L/min in a bore of 25.4 mm: 1.48 m/s, just under the 1.5 of the suction band
    expect(lay?.flow?.speedMPerS).toBeCloseTo(1.48, 2);
  });

  test('cut to the chord at rest it pulls on its ends, at rest already', async () => {
    const report = await layStory(story({ cutLengthMm: 484 + 2 * END.shoulderToMouthMm }));
    expect(findingsOf(report, 'slack')[0]?.severity).toBe('stop');
    expect(findingsOf(report, 'rock')[0]).toMatchObject({ severity: 'stop', rule: 'rock-slack' });
  });

  test('cut with slack for a hose that stands still it goes tight at the extreme', async () => {
    const rest = await layStory(story({ slack: 0.05 }));
    const shortest = rest.lays[0]?.tautLengthMm as number;
    const report = await layStory(story({ cutLengthMm: shortest * 1.01 + 2 * END.shoulderToMouthMm }));
    const [tight] = findingsOf(report, 'rock').filter(({ rule }) => rule === 'rock-slack');
    expect(tight?.severity).toBe('stop');
    expect(tight?.message).toContain('pitch +3 degrees');
  });

  test('a bore of 22.2 mm is too fast: 1.94 m/s', async () => {
    const report = await layStory(story({ hose: 'hose-14' }));
    expect(findingsOf(report, 'flowSpeed')[0]?.severity).toBe('look');
    expect(findingsOf(report, 'flowSpeed')[0]?.measured).toBeCloseTo(1.94, 2);
  });

  test('an elbow right at the pump is looked at', async () => {
    const report = await layStory(story({ b: { port: 'pump', end: 'elbow' } }));
    expect(findingsOf(report, 'suctionBend')[0]).toMatchObject({ severity: 'look', rule: 'suction-end-angle' });
  });

  test('a header on the engine that is far enough at rest is too near when it rocks', async () => {
    const report = await layStory(story({}, { name: 'header', min: [470, -40, 0], max: [560, 40, 60] }));
    const atRest = report.lays[0]?.clearances.find(({ to }) => to.id === 'header');
    expect(atRest?.provenAtLeastMm).toBeGreaterThan(76.2);
    const [near] = findingsOf(report, 'rock');
    expect(near).toMatchObject({ severity: 'stop', rule: 'rock-clearance' });
    expect(near?.measured).toBeLessThan(76.2);
    expect(near?.message).toContain('pitch');
  });
});
