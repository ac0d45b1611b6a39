import { describe, expect, test } from 'vitest';
import { psiToKpa } from '../../shared/base/units.ts';
import type { Port, Run, Service } from '../../shared/document/project/schema.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, type Block, findingsOf, layStory, type Story } from './storyBay.ts';

const END = { shoulderToMouthMm: 12, collarDiameterMm: 16, seatToBendMm: 0, bendToShoulderMm: 20 } as const;
const FEED: Service = {
  purpose: 'turbo-oil-feed',
  fluid: 'engine-oil',
  pressureKpa: psiToKpa(85),
  temperatureC: 110,
  bearing: 'ball',
  restrictorMm: 1.016,
};

function feedStory(service: Partial<Service> = {}, downpipe: readonly Block[] = []): Story {
  const run: Run = {
    id: 'feed',
    name: 'Turbo oil feed',
    a: { port: 'gallery', end: 'straight' },
    b: { port: 'turbo', end: 'straight' },
    service: { ...FEED, ...service },
    hose: 'hose-4',
    slack: 0.05,
    supports: [],
  };
  const { bearing, ...unsaid } = run.service;
  return {
    blocks: [
      { name: 'engine', min: [-150, -100, -100], max: [-25, 100, 100] },
      { name: 'turbo', min: [425, -60, -60], max: [520, 60, 60] },
      ...downpipe,
    ],
    hoses: [exampleHose({ id: 'hose-4', dash: 4, insideDiameterMm: 5.6, outsideDiameterMm: 8.5, minBendRadiusMm: 50 })],
    ends: [exampleEnd(0, { ...END, id: 'straight', dash: 4, hexMm: 14 })],
    bay: { skins: [{ id: 'downpipe', name: 'Downpipe', kind: 'hot', parts: ['downpipe*'], surfaceTemperatureC: 500 }] },
    project: {
      ports: [
        {
          id: 'gallery',
          name: 'Gallery',
          seatPoint: [0, 0, 0],
          axis: [1, 0, 0],
          up: [0, 0, 1],
          seat: 'flare-37',
          dash: 4,
        },
        {
          id: 'turbo',
          name: 'Turbo',
          seatPoint: [400, 0, 0],
          axis: [-1, 0, 0],
          up: [0, 0, 1],
          seat: 'flare-37',
          dash: 4,
        },
      ],
      runs: [bearing === undefined ? { ...run, service: unsaid } : run],
    },
  };
}

describe('the feed of a turbo with 85 psi of hot oil', () => {
  test('measured between 40 and 45 psi after its restrictor it is clean', async () => {
    const report = await layStory(feedStory({ turboPressureKpa: psiToKpa(42) }));
    expect(report.lays[0]?.outcome).toBe('laid');
    expect(aboveNote(report)).toEqual([]);
    expect(findingsOf(report, 'turboFeed')).toEqual([]);
  });

  test('a ball bearing asks for 40 to 45 psi, verified after the restrictor', async () => {
    const [note] = findingsOf(await layStory(feedStory()), 'turboFeed');
    expect(note?.severity).toBe('note');
    expect(note?.message).toContain('Verify 276 kPa (40 psi) to 310 kPa (45 psi)');
    expect(note?.message).toContain('after the restrictor');
  });

  test('a bearing taken for a journal shows the opposite advice', async () => {
    const [note] = findingsOf(await layStory(feedStory({ bearing: 'journal' })), 'turboFeed');
    expect(note).toMatchObject({ severity: 'note', rule: 'turbo-journal-restrictor' });
    expect(note?.message).toContain('two others fit one anyway');
  });

  test('between downpipes that leave it 40 mm at most it is stopped', async () => {
    // 44.25 mm to either side of the ports, less the hose's radius of 4.25
    const report = await layStory(
      feedStory({}, [
        { name: 'downpipe', min: [-20, -300, 44.25], max: [420, 300, 60] },
        { name: 'downpipe-low', min: [-20, -300, -60], max: [420, 300, -44.25] },
      ]),
    );
    const stop = report.findings.find((f) => f.severity === 'stop' && f.with?.id === 'downpipe');
    expect(stop?.limit).toBeCloseTo(76.2, 6);
    expect(stop?.measured).toBeLessThanOrEqual(40.1);
    expect(stop?.mend).toContain('behind a shield');
  });
});

const port = (id: string, seatPoint: Port['seatPoint'], axis: Port['axis']): Port => ({
  id,
  name: id,
  seatPoint,
  axis,
  up: [0, 1, 0],
  seat: 'flare-37',
  dash: 6,
});

const water = (id: string, name: string, a: string, b: string, service: Partial<Service>): Run => ({
  id,
  name,
  a: { port: a, end: 'straight' },
  b: { port: b, end: 'straight' },
  service: { purpose: 'turbo-water', fluid: 'coolant', pressureKpa: 120, temperatureC: 95, ...service },
  hose: 'hose-6',
  slack: 0.05,
  supports: [],
});

/**
 * Water from the block to the turbo, and from there to the header: heights of the turbo's two water ports above the level of the block's
 * port, mm, and how far its housing is turned. Block and header lie to either side, so both hoses rise where the ports let them.
 */
function waterStory(inletMm: number, outletMm: number, housingTurnDeg: number): Story {
  return {
    blocks: [
      { name: 'block', min: [-150, -150, -100], max: [-25, 150, 60] },
      { name: 'turbo', min: [370, -40, -20], max: [430, 40, 150] },
      { name: 'header', min: [825, -60, 250], max: [900, 60, 400] },
    ],
    hoses: [
      exampleHose({
        id: 'hose-6',
        dash: 6,
        core: 'epdm',
        cover: 'rubber',
        insideDiameterMm: 9,
        outsideDiameterMm: 14,
        minBendRadiusMm: 50,
        maxPressureKpa: 1000,
      }),
    ],
    ends: [exampleEnd(0, { ...END, id: 'straight', dash: 6, hexMm: 19 })],
    project: {
      ports: [
        port('block', [0, 0, 0], [1, 0, 0]),
        port('turbo-in', [350, 0, inletMm], [-1, 0, 0]),
        port('turbo-out', [450, 0, outletMm], [1, 0, 0]),
        port('header', [800, 0, 320], [-1, 0, 0]),
      ],
      runs: [
        water('water-in', 'Water to the turbo', 'block', 'turbo-in', { turboAt: 'b', housingTurnDeg }),
        water('water-out', 'Water from the turbo', 'turbo-out', 'header', { turboAt: 'a', housingTurnDeg }),
      ],
    },
  };
}

describe('the water of the same turbo', () => {
  test('in at the low side, out at the high side and uphill from there, the housing turned by 15 degrees: clean', async () => {
    const report = await layStory(waterStory(40, 90, 15));
    expect(report.lays.map(({ outcome }) => outcome)).toEqual(['laid', 'laid']);
    expect(aboveNote(report)).toEqual([]);
    expect(findingsOf(report, 'turboWater')).toEqual([]);
  });

  test('led out lower than it is led in it is told by how much, with the hose that brings it', async () => {
    const [low, ...others] = findingsOf(await layStory(waterStory(90, 40, 15)), 'turboWater');
    expect(others).toEqual([]);
    expect(low).toMatchObject({
      run: 'water-out',
      severity: 'look',
      rule: 'turbo-water-outlet-above',
      measured: -50,
      with: { kind: 'run', id: 'water-in' },
    });
    expect(low?.mend).toContain('Cold in at the low side, hot out at the high side');
  });

  test('the housing turned by 25 degrees is past the 20 that the maker allows; by 20 it is not', async () => {
    const turned = findingsOf(await layStory(waterStory(40, 90, 25)), 'turboWater');
    expect(turned.map(({ run, rule, limit }) => [run, rule, limit])).toEqual([
      ['water-in', 'turbo-housing-turn', 20],
      ['water-out', 'turbo-housing-turn', 20],
    ]);
    expect(turned[0]?.source).toContain('turbo maker');
    expect(findingsOf(await layStory(waterStory(40, 90, 20)), 'turboWater')).toEqual([]);
  });

  test('a header that hangs low is told: hot water does not fall', async () => {
    const hanging = waterStory(40, 90, 15);
    const ports = hanging.project.ports.map((p): Port => (p.id === 'header' ? { ...p, seatPoint: [800, 0, 30] } : p));
    const told = findingsOf(await layStory({ ...hanging, project: { ...hanging.project, ports } }), 'turboWater');
    expect(told.map(({ rule, severity }) => [rule, severity])).toEqual([['turbo-water-dip', 'look']]);
    expect(told[0]?.message).toContain('goes down by 60.0 mm');
  });
});
