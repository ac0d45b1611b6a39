import { describe, expect, test } from 'vitest';
import { psiToKpa } from '../../shared/base/units.ts';
import type { Run, Service } from '../../shared/document/project/schema.ts';
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
  });
});
