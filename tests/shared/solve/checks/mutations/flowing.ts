import { degreesToRadians, psiToKpa } from '../../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../../shared/base/vec3.ts';
import type { End, Hose } from '../../../../../shared/document/parts/schema.ts';
import type { Bay, Port, Project, Run, Service } from '../../../../../shared/document/project/schema.ts';
import { layAlong } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleProject, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

const DRAIN: Service = { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 130 };
const STILL = { x: 0, y: 0 };

interface DrainParts {
  readonly bay?: Partial<Bay>;
  readonly outlet?: Partial<Port>;
  readonly inlet?: Partial<Port>;
  readonly service?: Partial<Service>;
  readonly hose?: Partial<Hose>;
  readonly end?: Partial<End>;
}

/** A drain of size -10, straight, falling so steeply over 400 mm from port 1, which points down. */
function drain(fallDeg: number, parts: DrainParts = {}): Spoilt {
  const a = degreesToRadians(fallDeg);
  const dash = parts.hose?.dash ?? 10;
  const port = { dash, up: [0, 1, 0] as [number, number, number] };
  return spoilt(
    layAlong([
      [0, 0, 400 * Math.sin(a)],
      [400 * Math.cos(a), 0, 0],
    ]),
    {
      bay: { ...sampleProject().bay, ...parts.bay },
      ports: [
        samplePort({ ...port, axis: [0, 0, -1], ...parts.outlet }),
        samplePort({ id: 'p2', ...port, seatPoint: [400 * Math.cos(a), 0, 0], axis: [0, 0, 1], ...parts.inlet }),
      ],
      runs: [sampleRun({ service: { ...DRAIN, ...parts.service } })],
    },
    {
      hoses: [sampleHose({ dash, insideDiameterMm: 14, ...parts.hose })],
      ends: [sampleEnd({ dash, ...parts.end })],
    },
  );
}

const outletOff = (deg: number): Spoilt => {
  const a = degreesToRadians(deg);
  return drain(80, { outlet: { axis: [Math.sin(a), 0, -Math.cos(a)] } });
};
const leaning = (key: 'gradeDeg' | 'accelerationG', x: number, fallDeg: number): Spoilt => {
  const attitude = { name: 'leaning', gradeDeg: STILL, accelerationG: STILL, [key]: { x, y: 0 } };
  return drain(fallDeg, { bay: { attitudes: [attitude] } });
};
const overOil = (mm: number, leans: boolean): Spoilt => {
  const attitudes = leans ? [{ name: 'braking', gradeDeg: STILL, accelerationG: { x: 1, y: 0 } }] : [];
  // Braking at 1 g turns the oil by 45 degrees about its middle, 200 mm ahead of the entry: mm and 200 count by 1/sqrt 2.
  const seatPoint: [number, number, number] = [0, 0, leans ? 200 + mm * Math.SQRT2 : mm];
  const axis: [number, number, number] = leans ? [Math.SQRT1_2, 0, Math.SQRT1_2] : [0, 0, 1];
  return drain(80, { inlet: { seatPoint, axis }, bay: { oilLevel: [leans ? 200 : 90, 0, 0], attitudes } });
};

/** Half of what 12 mm falling 5 degrees carry full: pi g sin D^4 / (128 nu). */
const HALF_FULL = (((Math.PI * 9.80665 * Math.sin(degreesToRadians(5)) * 0.012 ** 4) / (128 * 60e-6)) * 6e4) / 2;

/** Turbo drains. 15 and 35 degrees, shaft, hole: garrettmotion.com; -10 and straight ends: bullseyepower.com; 5 degrees and twice the flow: common practice. */
const DRAINS: readonly Mutation[] = [
  { check: 'drainFall', rule: 'drain-outlet-tilt', severity: 'look', limit: 15, kept: 14.9, past: 15.1, at: outletOff },
  {
    check: 'drainFall',
    rule: 'drain-outlet-limit',
    severity: 'stop',
    limit: 35,
    kept: 34.9,
    past: 35.1,
    at: outletOff,
  },
  // Under a tenth of a degree it counts as level
  { check: 'drainFall', rule: 'drain-no-rise', severity: 'stop', limit: 0.1, kept: 0.102, past: 0.098, at: drain },
  { check: 'drainFall', rule: 'drain-least-fall', severity: 'look', limit: 5, kept: 5.01, past: 4.99, at: drain },
  {
    check: 'drainLean',
    rule: 'drain-way-tilt',
    severity: 'note',
    limit: 15,
    kept: 14.9,
    past: 15.1,
    at: (deg) => drain(90 - deg),
  },
  {
    check: 'drainLean',
    rule: 'drain-shaft-level',
    severity: 'look',
    limit: 15,
    kept: 14.9,
    past: 15.1,
    at: (shaftTiltDeg) => drain(80, { service: { shaftTiltDeg } }),
  },
  // It falls 30 degrees towards +X: leaned uphill by that much less a little, it falls by that little.
  {
    check: 'drainLean',
    rule: 'drain-falls-leaning',
    severity: 'look',
    limit: 0,
    kept: 0.2,
    past: -0.2,
    at: (fallDeg) => leaning('gradeDeg', 30 - fallDeg, 30),
  },
  {
    check: 'drainLean',
    rule: 'drain-falls-leaning',
    severity: 'note',
    limit: 0,
    kept: 0.2,
    past: -0.2,
    at: (fallDeg) => leaning('accelerationG', Math.tan(degreesToRadians(30 - fallDeg)), 30),
  },
  {
    check: 'turboDrainEnds',
    rule: 'drain-end-angle',
    severity: 'look',
    limit: 0,
    kept: 0,
    past: 0.5,
    at: (bendAngleDeg) => drain(80, { end: { bendAngleDeg } }),
  },
  {
    check: 'turboDrainEnds',
    rule: 'drain-least-dash',
    severity: 'look',
    limit: 10,
    kept: 10,
    past: 9,
    at: (dash) => drain(80, { hose: { dash } }),
  },
  {
    check: 'turboDrainEnds',
    rule: 'drain-bore',
    severity: 'look',
    limit: 1,
    kept: 1.01,
    past: 0.99,
    at: (ratio) => drain(80, { outlet: { boreMm: 14 / ratio } }),
  },
  {
    check: 'drainEntry',
    rule: 'drain-level-known',
    severity: 'note',
    limit: 1,
    kept: 1,
    past: 0,
    at: (known) => drain(80, known === 1 ? { bay: { oilLevel: [90, 0, -100] } } : {}),
  },
  {
    check: 'drainEntry',
    rule: 'drain-above-oil',
    severity: 'stop',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (mm) => overOil(mm, false),
  },
  {
    check: 'drainEntry',
    rule: 'drain-above-oil-leaning',
    severity: 'stop',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (mm) => overOil(mm, true),
  },
  {
    check: 'drainCapacity',
    rule: 'drain-capacity',
    severity: 'look',
    limit: 2,
    kept: 2.02,
    past: 1.98,
    at: (ratio) =>
      drain(5, { service: { viscosityMm2PerS: 60, flowLPerMin: HALF_FULL / ratio }, hose: { insideDiameterMm: 12 } }),
  },
];

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

const OIL: Service = { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 100 };
const SUCTION: Service = { ...OIL, purpose: 'oil-suction', pressureKpa: -15 };

/** One metre, straight and level. */
function metre(service: Service, hose: Partial<Hose>, end: Partial<End> = {}): Spoilt {
  return spoilt(
    layAlong([
      [0, 0, 0],
      [1000, 0, 0],
    ]),
    { runs: [sampleRun({ service })] },
    { hoses: [sampleHose(hose)], ends: [sampleEnd({ boreMm: 100, ...end })] },
  );
}

/** L/min that run at so many m/s in so many mm. */
const flowAt = (speedMPerS: number, boreMm: number): number => speedMPerS * (Math.PI / 4) * boreMm ** 2 * 1e-6 * 6e4;
/** m/s at which a metre of laminar oil (820 kg/m3) of so many mm2/s loses so many kPa: 32 nu rho v L / D^2. */
const speedAt = (kpa: number, boreMm: number, mm2PerS: number): number =>
  (kpa * 1e3 * (boreMm / 1e3) ** 2) / (32 * mm2PerS * 1e-6 * 820);

/** 300 mm along +X, a quarter turn of this radius, then 40 mm to END B, at the pump. */
function bendAtPump(radiusMm: number): Spoilt {
  const bend = Array.from({ length: 181 }, (_, i): Vec3 => {
    const u = degreesToRadians(i / 2);
    return [300 + radiusMm * Math.sin(u), radiusMm * (1 - Math.cos(u)), 0];
  });
  const corners: Vec3[] = [[0, 0, 0], ...bend, [300 + radiusMm, radiusMm + 40, 0]];
  return spoilt(layAlong(corners), { runs: [sampleRun({ service: SUCTION })] });
}

const lossKpa = (kpa: number, hose: Partial<Hose> = {}): Spoilt => {
  const viscosityMm2PerS = 100;
  const flowLPerMin = flowAt(speedAt(kpa, 12, viscosityMm2PerS), 12);
  return metre({ ...SUCTION, viscosityMm2PerS, flowLPerMin }, { insideDiameterMm: 12, ...hose });
};

/** Flow. 1.5 and 10 m/s: hytec-hydraulik.com; the others: common practice, no source. 1.25 times the hose's own 107.9 mm. */
const FLOW: readonly Mutation[] = [
  {
    check: 'suctionBend',
    rule: 'suction-calm-radius',
    severity: 'look',
    limit: 1.25 * 107.9,
    kept: 136,
    past: 134,
    at: bendAtPump,
  },
  {
    check: 'suctionBend',
    rule: 'suction-end-angle',
    severity: 'look',
    limit: 45,
    kept: 44.9,
    past: 45.1,
    at: (bendAngleDeg) => metre(SUCTION, {}, { bendAngleDeg }),
  },
  {
    check: 'suctionPressure',
    rule: 'suction-least-pressure',
    severity: 'look',
    limit: -20,
    kept: -19.9,
    past: -20.1,
    at: (kpa) => lossKpa(-kpa),
  },
  {
    check: 'suctionPressure',
    rule: 'pressure-rating',
    severity: 'stop',
    limit: -5,
    kept: -4.9,
    past: -5.1,
    at: (kpa) => lossKpa(-kpa, { vacuumLimitKpa: -5 }),
  },
  {
    check: 'flowSpeed',
    rule: 'flow-speed-suction',
    severity: 'look',
    limit: 1.5,
    kept: 1.49,
    past: 1.51,
    at: (speed) => metre({ ...SUCTION, flowLPerMin: flowAt(speed, 12) }, { insideDiameterMm: 12 }),
  },
  {
    check: 'flowSpeed',
    rule: 'flow-speed-pressure',
    severity: 'look',
    limit: 10,
    kept: 9.9,
    past: 10.1,
    at: (speed) => metre({ ...OIL, flowLPerMin: flowAt(speed, 12) }, { insideDiameterMm: 12 }),
  },
  {
    check: 'pressureDrop',
    rule: 'pressure-drop-share',
    severity: 'note',
    limit: 0.1,
    kept: 0.099,
    past: 0.101,
    at: (share) => {
      const flowLPerMin = flowAt(speedAt(share * 500, 12, 200), 12);
      return metre({ ...OIL, viscosityMm2PerS: 200, flowLPerMin }, { insideDiameterMm: 12 });
    },
  },
];

export const FLOWING_MUTATIONS: readonly Mutation[] = [...DRAINS, ...FEEDS, ...WATER, ...FLOW];
