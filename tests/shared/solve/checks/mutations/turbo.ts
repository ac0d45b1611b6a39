import { psiToKpa } from '../../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../../shared/base/vec3.ts';
import type { Hose } from '../../../../../shared/document/parts/schema.ts';
import type { Port, Project, Run, Service } from '../../../../../shared/document/project/schema.ts';
import { layAlong } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

/** A feed of 400 mm, its hose of so many sixteenths. */
function feed(service: Partial<Service>, hose: Partial<Hose> = {}): Spoilt {
  const dash = hose.dash ?? 4;
  const stated: Service = { purpose: 'turbo-oil-feed', fluid: 'engine-oil', pressureKpa: 300, temperatureC: 120 };
  return spoilt(
    layAlong([
      [0, 0, 0],
      [400, 0, 0],
    ]),
    {
      ports: [samplePort({ dash }), samplePort({ id: 'p2', dash, seatPoint: [400, 0, 0], axis: [-1, 0, 0] })],
      runs: [sampleRun({ service: { ...stated, ...service } })],
    },
    { hoses: [sampleHose({ dash, ...hose })], ends: [sampleEnd({ dash })] },
  );
}

const BALL = { bearing: 'ball', restrictorMm: 1.016, turboPressureKpa: 300 } as const;
const stated = (rule: string, kept: Partial<Service>, past: Partial<Service>): Mutation => ({
  check: 'turboFeed',
  rule,
  severity: 'note',
  limit: 1,
  kept: 1,
  past: 0,
  at: (known) => feed(known === 1 ? kept : past),
});

/** Turbo feeds. 40 to 45 psi, 1.0 to 1.5 mm, -3 and -4: pulsarturbobenelux.com and two other shops. */
const FEEDS: readonly Mutation[] = [
  stated('turbo-bearing-known', BALL, {}),
  stated('turbo-ball-pressure-known', BALL, { bearing: 'ball', restrictorMm: 1.016 }),
  stated('turbo-restrictor-known', { bearing: 'journal', restrictorMm: 0 }, { bearing: 'journal' }),
  ...(
    [
      ['turbo-ball-pressure-least', psiToKpa(40), -1, BALL],
      ['turbo-ball-pressure-most', psiToKpa(45), 1, BALL],
    ] as const
  ).map(
    ([rule, limit, outward, service]): Mutation => ({
      check: 'turboFeed',
      rule,
      severity: 'look',
      limit,
      kept: limit - 0.4 * outward,
      past: limit + 0.4 * outward,
      at: (turboPressureKpa) => feed({ ...service, turboPressureKpa }),
    }),
  ),
  {
    check: 'turboFeed',
    rule: 'turbo-ball-pressure-most',
    severity: 'look',
    limit: psiToKpa(45),
    kept: psiToKpa(45) - 0.4,
    past: psiToKpa(45) + 0.4,
    at: (pressureKpa) => feed({ bearing: 'ball', restrictorMm: 0, pressureKpa }),
  },
  {
    check: 'turboFeed',
    rule: 'turbo-ball-restrictor-least',
    severity: 'look',
    limit: 1,
    kept: 1.01,
    past: 0.99,
    at: (restrictorMm) => feed({ ...BALL, restrictorMm }),
  },
  {
    check: 'turboFeed',
    rule: 'turbo-ball-restrictor-most',
    severity: 'look',
    limit: 1.5,
    kept: 1.49,
    past: 1.51,
    at: (restrictorMm) => feed({ ...BALL, restrictorMm }),
  },
  {
    check: 'turboFeed',
    rule: 'turbo-ball-feed-dash',
    severity: 'look',
    limit: 3,
    kept: 3,
    past: 2,
    at: (dash) => feed(BALL, { dash }),
  },
  {
    check: 'turboFeed',
    rule: 'turbo-journal-restrictor',
    severity: 'note',
    limit: 0,
    kept: 0,
    past: 0.1,
    at: (restrictorMm) => feed({ bearing: 'journal', restrictorMm }),
  },
  {
    check: 'turboFeed',
    rule: 'turbo-journal-feed-bore',
    severity: 'look',
    limit: 6.35,
    kept: 6.4,
    past: 6.3,
    at: (insideDiameterMm) => feed({ bearing: 'journal', restrictorMm: 0 }, { dash: 3, insideDiameterMm }),
  },
];

const waterTo = (turboAt?: 'a' | 'b'): Service => ({
  purpose: 'turbo-water',
  fluid: 'coolant',
  pressureKpa: 100,
  temperatureC: 95,
  ...(turboAt === undefined ? {} : { turboAt }),
});

/** Cold water into a turbo at height 0, hot water out of it at `outletZ` along a lay from END B to END A. */
function hotWater(outletZ: number, corners: readonly Vec3[], service: Service = waterTo('b')): Spoilt {
  const at = (id: string, z: number): Port => samplePort({ id, seatPoint: [0, 0, z] });
  const between = (a: string, b: string) => ({ a: { port: a, end: 'end-8-0' }, b: { port: b, end: 'end-8-0' } });
  const changes: Partial<Project> = {
    ports: [at('block', -300), at('in', 0), at('out', outletZ), at('far', 300)],
    runs: [
      sampleRun({ id: 'cold', name: 'Cold', ...between('block', 'in'), service: waterTo('b') }),
      sampleRun({ id: 'hot', name: 'Hot', ...between('far', 'out'), flow: 'b-to-a', service }),
    ],
  };
  return spoilt({ ...layAlong(corners), run: 'hot' }, changes);
}

const UPHILL: readonly Vec3[] = [
  [0, 0, 300],
  [0, 0, 0],
];
const DIP = { check: 'turboWater', rule: 'turbo-water-dip', severity: 'look', limit: 5, kept: 4.9, past: 5.1 } as const;

function hump(mm: number, run: Partial<Run> = {}): Spoilt {
  const service: Service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 };
  const corners: Vec3[] = [
    [0, 0, 0],
    [200, 0, 0],
    [300, 0, mm],
    [400, 0, 0],
    [600, 0, 0],
  ];
  return spoilt(layAlong(corners), { runs: [sampleRun({ service, ...run })] });
}

/** Water. Uphill, 20 degrees: garrettmotion.com; 5 mm: common practice, no source. */
const WATER: readonly Mutation[] = [
  {
    check: 'turboWater',
    rule: 'turbo-water-side-known',
    severity: 'note',
    limit: 1,
    kept: 1,
    past: 0,
    at: (known) => hotWater(10, UPHILL, known === 1 ? waterTo('b') : waterTo()),
  },
  {
    check: 'turboWater',
    rule: 'turbo-water-outlet-above',
    severity: 'look',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (mm) => hotWater(mm, UPHILL),
  },
  {
    ...DIP,
    at: (mm) =>
      hotWater(10, [
        [0, 0, 300],
        [100, 0, 50 - mm],
        [200, 0, 50],
        [260, 0, 50],
      ]),
  },
  {
    ...DIP,
    at: (mm) =>
      hotWater(10, [
        [-60, 0, 0],
        [0, 0, 0],
        [300, 0, mm],
        [360, 0, mm],
      ]),
  },
  {
    check: 'turboWater',
    rule: 'turbo-housing-turn',
    severity: 'look',
    limit: 20,
    kept: 19.9,
    past: 20.1,
    at: (housingTurnDeg) => hotWater(10, UPHILL, { ...waterTo('b'), housingTurnDeg }),
  },
  {
    check: 'coolantHighPoint',
    rule: 'coolant-high-point',
    severity: 'look',
    limit: 5,
    kept: 4.9,
    past: 5.1,
    at: (mm) => hump(mm),
  },
  {
    check: 'coolantHighPoint',
    rule: 'coolant-high-point',
    severity: 'note',
    limit: 5,
    kept: 4.9,
    past: 5.1,
    at: (mm) => hump(mm, { bledAtCrest: true }),
  },
];

export const TURBO_MUTATIONS: readonly Mutation[] = [...FEEDS, ...WATER];
