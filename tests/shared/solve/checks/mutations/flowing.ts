import { degreesToRadians } from '../../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../../shared/base/vec3.ts';
import type { End, Hose } from '../../../../../shared/document/parts/schema.ts';
import type { Service } from '../../../../../shared/document/project/schema.ts';
import { layAlong } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

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
export const FLOWING_MUTATIONS: readonly Mutation[] = [
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
    rule: 'flow-speed-return',
    severity: 'look',
    limit: 4,
    kept: 3.96,
    past: 4.04,
    at: (speed) => metre({ ...OIL, purpose: 'oil-return', flowLPerMin: flowAt(speed, 12) }, { insideDiameterMm: 12 }),
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
