import { describe, expect, test } from 'vitest';
import { psiToKpa } from '../../shared/base/units.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { inTheBaySteps } from '../../shared/document/assembly/inTheBaySteps.ts';
import type { Mends } from '../../shared/document/mends/schema.ts';
import type { Adapter } from '../../shared/document/parts/schema.ts';
import type {
  AdapterUse,
  HoseClamps,
  Port,
  Run,
  Service,
  SystemTestRecord,
} from '../../shared/document/project/schema.ts';
import { readProject } from '../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { lengthWriter } from '../../shared/sheets/format/index.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, type Block, findingsOf, layStory, type Story, storyFiles } from './storyBay.ts';

const FUEL: Service = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 30, temperatureC: 40 };
const EXHAUST: Service = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 };
const FUEL_CLAMPS: HoseClamps = { count: 1, fromHoseEndMm: 7, bandMm: 8 };
const EXHAUST_CLAMPS: HoseClamps = { count: 2, fromHoseEndMm: 8, bandMm: 12.7 };

const ADAPTER = {
  portSeat: 'npt-1-4',
  portDash: 6,
  dash: 6,
  bendAngleDeg: 0,
  portToBendMm: 15,
  bendToSeatMm: 15,
  turning: 'settable',
  diameterMm: 18,
  provenance: 'example',
  source: 'invented for tests',
} as const;
const TEE: Adapter = {
  ...ADAPTER,
  id: 'tee',
  name: 'Tee',
  form: 'tee',
  seat: 'flare-37',
  branchSeat: 'flare-37',
  branchDash: 6,
  branchToSeatMm: 25,
  material: 'brass',
};
const BUSHING: Adapter = {
  ...ADAPTER,
  id: 'bushing',
  name: 'Bushing',
  form: 'straight',
  seat: 'npt-1-4',
  material: 'stainless',
};

const BRANCH: AdapterUse = { adapter: 'tee', outlet: 'branch' };
const BARRIER: AdapterUse = { adapter: 'bushing', outlet: 'straight' };

/** What of the boat a test spoils. */
interface Cruiser {
  readonly fuelHose?: string;
  readonly lineClampMm?: number;
  readonly fuelClamps?: HoseClamps;
  readonly exhaustClamps?: HoseClamps;
  readonly onTank?: readonly AdapterUse[];
  readonly exhaustTest?: SystemTestRecord;
  readonly more?: readonly Block[];
}

const flare = (id: string, seatPoint: [number, number, number], facing: 1 | -1, more: Partial<Port> = {}): Port => ({
  id,
  name: id,
  seatPoint,
  axis: [facing, 0, 0],
  up: [0, 0, 1],
  seat: 'flare-37',
  dash: 6,
  ...more,
});

function runOf(id: string, ports: readonly [string, string], changes: Partial<Run>, clamps: HoseClamps): Run {
  const end = id === 'exhaust' ? 'spout' : 'barb';
  return {
    id,
    name: id,
    a: { port: ports[0], end, hoseClamps: clamps },
    b: { port: ports[1], end, hoseClamps: clamps },
    service: FUEL,
    hose: 'a1',
    slack: 0.05,
    supports: [],
    ...changes,
  };
}

function cruiser({
  fuelHose = 'a1',
  lineClampMm = 90,
  fuelClamps = FUEL_CLAMPS,
  exhaustClamps = EXHAUST_CLAMPS,
  onTank = [BARRIER, BRANCH],
  exhaustTest,
  more = [],
}: Cruiser = {}): Story {
  const hose = { hose: fuelHose };
  const exhaust = { service: EXHAUST, hose: 'wet-exhaust' };
  const made = exhaustTest === undefined ? {} : { asBuilt: { systemTest: exhaustTest } };
  return {
    blocks: [
      { name: 'bulkhead', min: [-120, -60, -60], max: [-40, 60, 60] },
      { name: 'pump', min: [440, -60, -60], max: [560, 60, 120] },
      { name: 'carburettor', min: [990, -80, 60], max: [1150, 80, 260] },
      { name: 'tank', min: [-700, 400, -300], max: [-100, 900, 20] },
      { name: 'generator', min: [200, 500, -100], max: [400, 700, 250] },
      { name: 'manifold', min: [-300, -620, -50], max: [-50, -380, 300] },
      { name: 'water-lock', min: [760, -620, -300], max: [960, -380, 120] },
      ...more,
    ],
    hoses: [
      exampleHose({
        id: 'a1',
        name: 'Marine fuel hose',
        core: 'synthetic-rubber',
        cover: 'rubber',
        dash: 6,
        insideDiameterMm: 9.5,
        outsideDiameterMm: 17,
        minBendRadiusMm: 50,
        maxPressureKpa: 1000,
        maxTemperatureC: 100,
        listedFluids: ['petrol'],
        marking: 'USCG TYPE A1-15',
      }),
      exampleHose({
        id: 'race',
        name: 'Race hose',
        dash: 6,
        insideDiameterMm: 8.7,
        outsideDiameterMm: 12,
        minBendRadiusMm: 50,
      }),
      exampleHose({
        id: 'wet-exhaust',
        name: 'Wet exhaust hose',
        core: 'synthetic-rubber',
        cover: 'rubber',
        dash: 24,
        insideDiameterMm: 38.1,
        outsideDiameterMm: 48,
        minBendRadiusMm: 76,
        maxPressureKpa: 200,
        maxTemperatureC: 150,
        listedFluids: ['exhaust-water'],
      }),
    ],
    ends: [
      exampleEnd(0, {
        id: 'barb',
        dash: 6,
        joint: 'clamped',
        material: 'brass',
        seatToBendMm: 0,
        bendToShoulderMm: 18,
        shoulderToMouthMm: 25,
        collarDiameterMm: 18,
        hexMm: 17,
      }),
      exampleEnd(0, {
        id: 'spout',
        dash: 24,
        seat: 'spout',
        form: 'barb',
        joint: 'clamped',
        material: 'stainless',
        seatToBendMm: 0,
        bendToShoulderMm: 20,
        shoulderToMouthMm: 60,
        collarDiameterMm: 50,
      }),
    ],
    adapters: [TEE, BUSHING],
    project: {
      vehicle: 'boat',
      ports: [
        flare('line', [0, 0, 0], 1, { material: 'brass', rigidLine: { clampMm: lineClampMm } }),
        flare('pump-in', [400, 0, 0], -1, { material: 'brass' }),
        flare('pump-out', [600, 0, 60], 1, { material: 'brass' }),
        flare('carburettor', [950, 0, 130], -1, { material: 'brass' }),
        flare('tank', [-300, 600, 40], 1, {
          axis: [0, 0, 1],
          up: [1, 0, 0],
          seat: 'npt-1-4',
          material: 'aluminium',
          adapters: [...onTank],
        }),
        flare('generator', [160, 600, 100], -1, { material: 'brass' }),
        flare('elbow', [0, -500, 100], 1, { seat: 'spout', dash: 24 }),
        flare('water-lock', [710, -500, 60], -1, { seat: 'spout', dash: 24 }),
      ],
      runs: [
        runOf('to-pump', ['line', 'pump-in'], hose, fuelClamps),
        runOf('to-carburettor', ['pump-out', 'carburettor'], hose, fuelClamps),
        runOf('to-generator', ['tank', 'generator'], hose, fuelClamps),
        runOf('exhaust', ['elbow', 'water-lock'], { ...exhaust, ...made }, exhaustClamps),
      ],
    },
  };
}

async function mendsOf(story: Story, run: string): Promise<Mends> {
  const input = { ...storyFiles(story), run, report: await layStory(story) };
  const end = await runJob('tryMends', input, UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

/** A casing round the hose from the pump's outlet on, longer than a finger and too narrow for an arm. */
const CASING: readonly Block[] = [
  { name: 'casing-top', min: [565, -110, 104], max: [830, 110, 114] },
  { name: 'casing-floor', min: [565, -110, 6], max: [830, 110, 16] },
  { name: 'casing-left', min: [565, -110, 16], max: [830, -100, 104] },
  { name: 'casing-right', min: [565, 100, 16], max: [830, 110, 104] },
];

describe('a petrol cruiser: a rigid line to the pump, hose from there to the carburettor, a wet exhaust', () => {
  test('done right, nothing is found but what is to be known', async () => {
    const report = await layStory(cruiser());
    expect(report.lays.map(({ outcome }) => outcome)).toEqual(['laid', 'laid', 'laid', 'laid']);
    expect(aboveNote(report)).toEqual([]);
    expect(report.findings.length).toBeLessThan(4);
    expect(findingsOf(report, 'jointAccess')).toEqual([]);
  });

  test('race PTFE without a marking: its marking is asked for on every petrol hose, and it does not go under hose clamps', async () => {
    const report = await layStory(cruiser({ fuelHose: 'race' }));
    const asked = findingsOf(report, 'fuelMarking');
    expect(asked.map(({ run }) => run)).toEqual(['to-pump', 'to-carburettor', 'to-generator']);
    for (const finding of asked) {
      expect(finding).toMatchObject({ severity: 'look', rule: 'marine-fuel-marking' });
      expect(finding.source).toContain('33 CFR 183.558');
      expect(finding.message).toContain('A1');
      expect(finding.mend).toContain('State its marking');
    }
    expect(findingsOf(report, 'hoseClamps', 'to-pump')[0]).toMatchObject({
      severity: 'stop',
      rule: 'hose-clamps-on-ptfe',
    });
  });

  test('the rigid line first held 180 mm before the hose is looked at: 102 mm is the limit', async () => {
    const [line, ...more] = findingsOf(await layStory(cruiser({ lineClampMm: 180 })), 'rigidLine');
    expect(line).toMatchObject({ severity: 'look', rule: 'rigid-line-clamp', run: 'to-pump', measured: 180 });
    // four inches
    expect(line?.limit).toBeCloseTo(101.6, 9);
    expect(line?.source).toContain('33 CFR 183.562');
    expect(more).toEqual([]);
    expect(findingsOf(await layStory(cruiser({ lineClampMm: 101 })), 'rigidLine')).toEqual([]);
  });

  test('a hose clamp 3 mm from the end of its hose is looked at: a quarter of an inch is the limit', async () => {
    const report = await layStory(cruiser({ fuelClamps: { ...FUEL_CLAMPS, fromHoseEndMm: 3 } }));
    const near = findingsOf(report, 'hoseClamps', 'to-carburettor');
    expect(near.map(({ rule, severity }) => `${rule} ${severity}`)).toEqual([
      'hose-clamp-from-end look',
      'hose-clamp-from-end look',
    ]);
    expect(near[0]).toMatchObject({ measured: 3, limit: expect.closeTo(6.35, 9) });
  });

  test('a brass tee straight on the alloy tank is looked at; a bushing of stainless between them mends it', async () => {
    const [tee, ...more] = findingsOf(await layStory(cruiser({ onTank: [BRANCH] })), 'endMetals');
    expect(tee).toMatchObject({ severity: 'look', rule: 'copper-off-aluminium', run: 'to-generator' });
    expect(tee?.message).toContain('Tee of brass');
    expect(tee?.mend).toContain('stainless');
    expect(more).toEqual([]);
  });

  test('one hose clamp at each end of the exhaust is looked at: two that do not overlap', async () => {
    const report = await layStory(cruiser({ exhaustClamps: { ...EXHAUST_CLAMPS, count: 1 } }));
    const single = findingsOf(report, 'hoseClamps');
    expect(single.map(({ run, rule, measured, limit }) => [run, rule, measured, limit])).toEqual([
      ['exhaust', 'exhaust-hose-clamps', 1, 2],
      ['exhaust', 'exhaust-hose-clamps', 1, 2],
    ]);
  });

  test('what would mend it is tried: the clamps of the exhaust, and hose that is marked and made for clamps', async () => {
    const single = cruiser({ exhaustClamps: { ...EXHAUST_CLAMPS, count: 1 } });
    const [two] = (await mendsOf(single, 'exhaust')).answers;
    expect(two?.mend.edit).toEqual({ kind: 'hose-clamps', a: EXHAUST_CLAMPS, b: EXHAUST_CLAMPS });
    expect(two).toMatchObject({ stopsLeft: 0, looksLeft: 0 });
    const [marked] = (await mendsOf(cruiser({ fuelHose: 'race' }), 'to-pump')).answers;
    expect(marked).toMatchObject({ mend: { edit: { kind: 'hose', hose: 'a1' } }, stopsLeft: 0, looksLeft: 0 });
  });

  test('in the boat the exhaust holds 4 psi for five minutes, the fuel 3 psi, and no joint takes a saw', () => {
    const read = readProject(storyFiles(cruiser()));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { runs, project } = read.value.resolved;
    const stepsOf = (id: string) => {
      const run = runs.find(({ run: one }) => one.id === id);
      if (run === undefined) throw new Error(id);
      return new Map(inTheBaySteps(run, project.vehicle, lengthWriter()).map((step) => [step.id, step.words]));
    };
    expect(stepsOf('exhaust').get('system-test')).toContain('27.6 kPa (4 psi) for 5 minutes');
    expect(stepsOf('to-pump').get('system-test')).toContain('20.7 kPa (3 psi)');
    expect(stepsOf('to-pump').get('rigid-line-a')).toContain('101.6 mm (4 in)');
    for (const { run } of runs) expect(stepsOf(run.id).get('access')).toContain('a saw');
  });

  test('the test of the exhaust is written down: 4 psi for five minutes is enough, 3 psi is not, a loss stops it', async () => {
    const HELD: SystemTestRecord = { on: '2026-05-12', pressureKpa: psiToKpa(4), holdS: 300 };
    const told = async (change: Partial<SystemTestRecord>) => {
      const report = await layStory(cruiser({ exhaustTest: { ...HELD, ...change } }));
      return findingsOf(report, 'systemTested').map(({ rule, severity }) => `${rule} ${severity}`);
    };
    expect(await told({})).toEqual([]);
    expect(await told({ pressureKpa: psiToKpa(3) })).toEqual(['exhaust-test-pressure look']);
    expect(await told({ holdS: 60 })).toEqual(['exhaust-test-hold look']);
    expect(await told({ failed: true })).toEqual(['system-test-passed stop']);
  });

  test('a joint in a casing that no arm comes into is told, the others are not', async () => {
    const cased = cruiser({ more: CASING });
    const { runs } = cased.project;
    const onlyRun = { ...cased.project, runs: runs.filter(({ id }) => id === 'to-carburettor') };
    const told = findingsOf(await layStory({ ...cased, project: onlyRun }), 'jointAccess');
    expect(told).toMatchObject([{ severity: 'note', rule: 'joint-access', run: 'to-carburettor' }]);
    expect(told[0]?.message).toContain('END A');
  });
});
