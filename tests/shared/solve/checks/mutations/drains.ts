import { degreesToRadians } from '../../../../../shared/base/units.ts';
import type { End, Hose } from '../../../../../shared/document/parts/schema.ts';
import type { Bay, Port, Service } from '../../../../../shared/document/project/schema.ts';
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
export const DRAIN_MUTATIONS: readonly Mutation[] = [
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
