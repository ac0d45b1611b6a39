import { readFileSync } from 'node:fs';
import type { Clock, EndPose, Finding, Lay, LayReport } from '../../shared/document/lay/schema.ts';
import type { End, Hose, Sleeve } from '../../shared/document/parts/schema.ts';
import type { Port, Run } from '../../shared/document/project/schema.ts';
import type { SheetFonts, SheetInput, SheetRun } from '../../shared/sheets/index.ts';

/** Sample parts, runs and reports for the papers' tests: invented, self-consistent, in the shapes of the product. */
const EXAMPLE = { provenance: 'example', source: 'invented for tests' } as const;

export const BRAIDED_8: Hose = {
  id: 'ptfe-braid-8',
  name: 'Smooth PTFE, steel braid',
  construction: 'smooth PTFE core, one stainless steel braid',
  core: 'ptfe-smooth',
  conductiveCore: true,
  cover: 'steel-braid',
  dash: 8,
  insideDiameterMm: 10.7,
  outsideDiameterMm: 15.7,
  minBendRadiusMm: 88.9,
  minBendRadiusDatum: 'inside',
  maxPressureKpa: 13790,
  minTemperatureC: -55,
  maxTemperatureC: 230,
  ...EXAMPLE,
};

export const RUBBER_10: Hose = {
  ...BRAIDED_8,
  id: 'rubber-10',
  name: 'CPE rubber, textile braid',
  construction: 'CPE core, steel braid inside, textile cover',
  core: 'cpe',
  cover: 'textile-braid',
  dash: 10,
  insideDiameterMm: 14.2,
  outsideDiameterMm: 21.4,
  minBendRadiusMm: 76.2,
  maxPressureKpa: 6895,
  maxTemperatureC: 150,
};

/** The end of the known answer: 90 degrees, C = bendToShoulder = 47. */
export const ELBOW_8: End = {
  id: 'elbow-90-8',
  name: '90 degree swivel elbow',
  seat: 'flare-37',
  dash: 8,
  bendAngleDeg: 90,
  seatToBendMm: 38,
  bendToShoulderMm: 47,
  shoulderToMouthMm: 22,
  collarDiameterMm: 24,
  joint: 'crimp',
  material: 'steel',
  turning: 'swivel',
  ...EXAMPLE,
};

export const STRAIGHT_10: End = {
  ...ELBOW_8,
  id: 'straight-10',
  name: 'straight swivel',
  dash: 10,
  bendAngleDeg: 0,
  seatToBendMm: 10,
  bendToShoulderMm: 16.7,
  shoulderToMouthMm: 24,
  collarDiameterMm: 30,
  joint: 'screw-together',
  material: 'aluminium',
};

export const ELBOW_45_10: End = {
  ...STRAIGHT_10,
  id: 'elbow-45-10',
  name: '45 degree swivel elbow',
  bendAngleDeg: 45,
  seatToBendMm: 30,
  bendToShoulderMm: 28,
};

export const SLEEVE_8: Sleeve = {
  id: 'fire-sleeve-16',
  name: 'Fire sleeve, silicone on glass',
  insideDiameterMm: 16,
  outsideDiameterMm: 24,
  maxTemperatureC: 260,
  weightKgPerM: 0.25,
  ...EXAMPLE,
};

function port(id: string, name: string, dash: number): Port {
  return { id, name, seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0], seat: 'flare-37', dash };
}

/** A way of place-holding directions: the papers draw from lengths and the clock, not from poses. */
function pose(ownClockDeg: number): EndPose {
  return {
    seatPoint: [0, 0, 0],
    bendPoint: [0, 0, 38],
    shoulderPoint: [47, 0, 38],
    mouthPoint: [69, 0, 38],
    outletAxis: [0, 0, -1],
    up: [0, 0, -1],
    hoseAxis: [1, 0, 0],
    ownClockDeg,
    ownClockChosen: true,
  };
}

function cutOff(end: End): number {
  return end.seatToBendMm * Math.cos((end.bendAngleDeg * Math.PI) / 180) + end.bendToShoulderMm;
}

/** A lay whose lengths agree with one another: overall = cut + C + C, live = cut less both insertions. */
export function sampleLay(run: SheetRun, overallLengthMm: number, slack: number, clock: Clock): Lay {
  const cutOffMm = { a: cutOff(run.a.end), b: cutOff(run.b.end) };
  const cutLengthMm = overallLengthMm - cutOffMm.a - cutOffMm.b;
  const liveLengthMm = cutLengthMm - run.a.end.shoulderToMouthMm - run.b.end.shoulderToMouthMm;
  return {
    run: run.run.id,
    outcome: 'laid',
    centreline: {
      points: [
        [0, 0, 0],
        [cutLengthMm, 0, 0],
      ],
      arcLengthMm: [0, cutLengthMm],
    },
    outsideDiameterMm: run.sleeve?.outsideDiameterMm ?? run.hose.outsideDiameterMm,
    ends: { a: pose(181.4), b: pose(42.7) },
    supports: [],
    cutLengthMm,
    liveLengthMm,
    tautLengthMm: liveLengthMm / (1 + slack),
    overallLengthMm,
    cutOffMm,
    slack,
    clock,
    minRadius: {
      radiusMm: 100.04,
      provenAtLeastMm: 100.01,
      limitMm: run.hose.minBendRadiusMm + run.hose.outsideDiameterMm / 2,
      at: { arcLengthMm: 81.3, point: [81.3, 0, 0] },
    },
    straightTailMm: { a: 3, b: 3 },
    clearances: [],
    residual: 1e-10,
    timingsMs: {},
  };
}

function run(id: string, name: string, parts: Omit<SheetRun, 'run'>, service: Run['service']): SheetRun {
  return {
    ...parts,
    run: {
      id,
      name,
      a: { port: parts.a.port.id, end: parts.a.end.id },
      b: { port: parts.b.port.id, end: parts.b.end.id },
      service,
      hose: parts.hose.id,
      ...(parts.sleeve ? { sleeve: parts.sleeve.id } : {}),
      slack: 0.05,
      supports: [],
    },
  };
}

/** The known answer (trade story 4): two 90 degree ends, overall 514.159, C 47 and 47, cut 420.159, clock 270. */
export const COOLER_RUN = run(
  'cooler-feed',
  'Oil cooler feed',
  {
    hose: BRAIDED_8,
    a: { port: port('block-out', 'Oil filter block, out', 8), end: ELBOW_8 },
    b: { port: port('cooler-in', 'Oil cooler, in', 8), end: ELBOW_8 },
  },
  { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 620, temperatureC: 125, flowLPerMin: 30 },
);
export const COOLER_LAY: Lay = {
  ...sampleLay(COOLER_RUN, 514.159, 0.0512, { kind: 'angle', deg: 270, toleranceDeg: 3 }),
  supports: [
    {
      id: 'rail',
      kind: 'clamp',
      proposed: false,
      at: { arcLengthMm: 211.6, point: [211.6, 0, 0] },
      axis: [1, 0, 0],
    },
    { id: 'low', kind: 'waypoint', proposed: false, at: { arcLengthMm: 300, point: [300, 0, 0] }, axis: [1, 0, 0] },
  ],
};

/** A drain with one straight end: no clock. */
export const DRAIN_RUN = run(
  'turbo-drain',
  'Turbo oil drain',
  {
    hose: RUBBER_10,
    a: { port: port('turbo-drain-flange', 'Turbo drain flange', 10), end: STRAIGHT_10 },
    b: { port: port('pan-return', 'Pan return', 10), end: ELBOW_45_10 },
  },
  { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 7, temperatureC: 110 },
);
export const DRAIN_LAY = sampleLay(DRAIN_RUN, 296.4, 0.0498, { kind: 'free', reason: 'a-straight' });

/** A sleeved fuel hose that comes too near a hot part. */
export const FUEL_RUN = run(
  'fuel-feed',
  'Fuel feed, firewall to pump',
  {
    hose: BRAIDED_8,
    sleeve: SLEEVE_8,
    a: { port: port('firewall-out', 'Firewall fitting', 8), end: ELBOW_8 },
    b: {
      port: port('pump-in', 'Pump, in', 8),
      end: { ...ELBOW_8, id: 'elbow-45-8', name: '45 degree swivel elbow', bendAngleDeg: 45 },
    },
  },
  { purpose: 'fuel', fluid: 'petrol', pressureKpa: 414, temperatureC: 45 },
);
export const FUEL_LAY: Lay = {
  ...sampleLay(FUEL_RUN, 913.27, 0.0533, { kind: 'angle', deg: 112.6, toleranceDeg: 5 }),
  outcome: 'near-miss',
  reason: 'The hose comes to 63.4 mm from the exhaust manifold; the rule asks for 77.2 mm.',
  supports: [
    {
      id: 'bulkhead',
      kind: 'pass-through',
      proposed: false,
      at: { arcLengthMm: 148.2, point: [0, 0, 0] },
      axis: [1, 0, 0],
    },
    { id: 'frame-1', kind: 'clamp', proposed: false, at: { arcLengthMm: 402.9, point: [0, 0, 0] }, axis: [1, 0, 0] },
    { id: 'proposed-1', kind: 'clamp', proposed: true, at: { arcLengthMm: 655.1, point: [0, 0, 0] }, axis: [1, 0, 0] },
  ],
};

/** A run for which nothing was found. */
export const CLOSED_RUN = run(
  'scavenge',
  'Scavenge, pan to pump',
  {
    hose: RUBBER_10,
    a: { port: port('pan-out', 'Pan, out', 10), end: ELBOW_45_10 },
    b: { port: port('scavenge-in', 'Scavenge pump, in', 10), end: STRAIGHT_10 },
  },
  { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -40, temperatureC: 115, flowLPerMin: 45 },
);
export const CLOSED_LAY: Lay = {
  ...sampleLay(CLOSED_RUN, 333.3, 0, { kind: 'free', reason: 'b-straight' }),
  outcome: 'no-way',
  reason:
    'No way from Pan, out to Scavenge pump, in keeps a centreline radius of 86.9 mm and 6 mm from the plain skin.',
};

export const FINDINGS: Finding[] = [
  {
    check: 'straightTail',
    run: 'cooler-feed',
    severity: 'look',
    rule: 'straight-tail',
    limit: 15.7,
    measured: 3,
    margin: -12.7,
    unit: 'mm',
    at: { arcLengthMm: 22, point: [0, 0, 0] },
    source: 'common practice, no source',
    dissent: 'a vendor: 1.5 x radius; others 1 to 2 hose diameters',
    message: 'The hose bends 3.0 mm from the mouth of END A.',
    mend: 'use a longer hose, or turn END A',
    overrideReason: 'same layout ran two seasons',
  },
  {
    check: 'bendRadius',
    run: 'cooler-feed',
    severity: 'note',
    rule: 'bend-radius',
    limit: 96.75,
    measured: 100.04,
    margin: 3.29,
    unit: 'mm',
    at: { arcLengthMm: 81.3, point: [0, 0, 0] },
    source: "the hose's own table",
    message: 'Tightest bend, at the centreline.',
  },
  {
    check: 'clearance',
    run: 'fuel-feed',
    severity: 'stop',
    rule: 'clearance-hot',
    limit: 77.2,
    measured: 63.38,
    margin: -13.82,
    unit: 'mm',
    at: { arcLengthMm: 512.4, point: [0, 0, 0] },
    with: { kind: 'skin', id: 'exhaust', part: 'manifold' },
    source: 'NJ Administrative Code 13:62-4.16 (3 in); scan uncertainty 1 mm',
    dissent: 'an aircraft owners’ group sleeves anything within 6 in',
    message: 'Too near the exhaust manifold.',
    mend: 'move clamp frame-1 20 mm outward, or fit a metal shield',
  },
];

/** The report of all four runs. */
export const REPORT: LayReport = {
  format: 'hosewright-lay-report',
  version: 1,
  solverVersion: '0.1.0',
  seed: 1,
  project: {
    name: 'Bench car',
    exampleData: true,
    inputHash: '3f9a61c27b0de8455c1b7f20aa94d3e6017c52f8b9ee3d4c6a1f0587d2b4c9e1',
  },
  lays: [COOLER_LAY, DRAIN_LAY, FUEL_LAY, CLOSED_LAY],
  findings: FINDINGS,
};

/** The papers' type, from the package that the product ships it from. */
export function sheetFonts(): SheetFonts {
  const read = (file: string): Uint8Array =>
    new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${file}`, import.meta.url)));
  return { regular: read('DejaVuSans.ttf'), bold: read('DejaVuSans-Bold.ttf') };
}

export function sampleInput(over: Partial<SheetInput> = {}): SheetInput {
  return {
    project: { name: 'Bench car', exampleData: true },
    report: REPORT,
    runs: [COOLER_RUN, DRAIN_RUN, FUEL_RUN, CLOSED_RUN],
    fonts: sheetFonts(),
    printedOn: '2026-03-14',
    ...over,
  };
}
