import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { Hose } from '../../../../shared/document/parts/schema.ts';
import type { Run, Service } from '../../../../shared/document/project/schema.ts';
import { flowOf } from '../../../../shared/solve/flow/flowOf.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const OIL: Service = { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 100 };
const STRAIGHT: readonly Vec3[] = [
  [0, 0, 0],
  [1000, 0, 0],
];

function project(hose: Partial<Hose>, service: Service, run: Partial<Run> = {}) {
  const parts = { hoses: [sampleHose(hose)], ends: [sampleEnd({ bendAngleDeg: 0, boreMm: 100 })] };
  return resolved({ runs: [sampleRun({ service, ...run })] }, parts);
}

function found(check: string, hose: Partial<Hose>, service: Service, corners = STRAIGHT): Finding[] {
  return findingsOf(check, project(hose, service), layAlong(corners));
}

function flowIn(hose: Partial<Hose>, service: Service, corners = STRAIGHT) {
  const [run] = project(hose, service).runs;
  return run === undefined ? undefined : flowOf(run, layAlong(corners));
}

describe('flowSpeed', () => {
  const suction: Service = { ...OIL, purpose: 'oil-suction', pressureKpa: -15, flowLPerMin: 45 };

  // Trade figures, computed there: 45 L/min in 25.4 mm is 1.48 m/s, in 22.2 mm 1.94 m/s; 1.5 is the limit on suction.
  it('lets 45 L/min of suction through 25.4 mm and looks at 22.2 mm', () => {
    expect(found('flowSpeed', { insideDiameterMm: 25.4, outsideDiameterMm: 32 }, suction)).toEqual([]);
    const [finding] = found('flowSpeed', { insideDiameterMm: 22.2, outsideDiameterMm: 29 }, suction);
    expect(finding).toMatchObject({ severity: 'look', rule: 'flow-speed-suction', unit: 'm/s', limit: 1.5 });
    expect(finding?.measured).toBeCloseTo(1.94, 2);
    expect(finding?.dissent).toContain('flodraulic');
  });

  it('turns at 10 m/s under pressure', () => {
    // 10 m/s in 10 mm is 47.12 L/min.
    const hose = { insideDiameterMm: 10 };
    expect(found('flowSpeed', hose, { ...OIL, flowLPerMin: 47.0 })).toEqual([]);
    expect(found('flowSpeed', hose, { ...OIL, flowLPerMin: 47.3 })).toHaveLength(1);
  });

  it('says nothing without a flow, of a drain, of other fluids', () => {
    expect(found('flowSpeed', {}, OIL)).toEqual([]);
    expect(found('flowSpeed', {}, { ...OIL, purpose: 'turbo-oil-drain', flowLPerMin: 900 })).toEqual([]);
    expect(found('flowSpeed', {}, { ...OIL, fluid: 'air', flowLPerMin: 900 })).toEqual([]);
  });
});

describe('what a laid hose loses', () => {
  it('straight and laminar it is 32 nu rho v L / D^2 (Hagen and Poiseuille)', () => {
    const flow = flowIn({ insideDiameterMm: 10 }, { ...OIL, flowLPerMin: 10, viscosityMm2PerS: 50 });
    const speed = 10 / 6e4 / ((Math.PI / 4) * 0.01 ** 2);
    // layAlong's hose is as long as its corners are apart: 1 m. Pa, then kPa; oil of 820 kg/m3.
    const closed = (32 * 50e-6 * 820 * speed * 1) / 0.01 ** 2 / 1000;
    expect(flow?.regime).toBe('laminar');
    expect(flow?.speedMPerS).toBeCloseTo(speed, 12);
    expect(flow?.dropKpa.likely).toBeCloseTo(closed, 6);
    expect(flow?.bendsKpa).toBe(0);
    expect(flow?.basis[0]).toBe('viscosity as stated');
  });

  it('keeps the likely drop within its band, and the band opens where viscosity is guessed', () => {
    const stated = flowIn({}, { ...OIL, flowLPerMin: 4, viscosityMm2PerS: 14 });
    const guessed = flowIn({}, { ...OIL, flowLPerMin: 4 });
    for (const flow of [stated, guessed]) {
      expect(flow?.dropKpa.low).toBeLessThanOrEqual(flow?.dropKpa.likely ?? 0);
      expect(flow?.dropKpa.high).toBeGreaterThanOrEqual(flow?.dropKpa.likely ?? 0);
    }
    const width = (f: typeof stated) => (f?.dropKpa.high ?? 0) / (f?.dropKpa.low ?? 1);
    expect(width(guessed)).toBeGreaterThan(width(stated));
  });

  it('loses more in a convoluted bore, and says what a smooth one would', () => {
    const water: Service = { ...OIL, purpose: 'coolant', fluid: 'coolant', temperatureC: 80, flowLPerMin: 60 };
    const smooth = flowIn({ core: 'ptfe-smooth', insideDiameterMm: 16 }, water);
    const convoluted = flowIn({ core: 'ptfe-convoluted', insideDiameterMm: 16, convolutionPitchMm: 3.2 }, water);
    expect(convoluted?.smoothBoreKpa).toBeCloseTo(smooth?.dropKpa.likely ?? 0, 9);
    // Hawthorne at five pitches a bore: f = 0.1195 (published values 5.7); one metre is 62.5 bores.
    const dynamic = (1042 * (convoluted?.speedMPerS ?? 0) ** 2) / 2000;
    expect(convoluted?.hoseKpa).toBeCloseTo(0.1195 * 62.5 * dynamic, 1);
  });

  it('loses more the more it turns, and gains by its fall', () => {
    const down: readonly Vec3[] = [
      [0, 0, 500],
      [0, 0, -500],
    ];
    const service = { ...OIL, flowLPerMin: 30 };
    const flow = flowIn({}, service, down);
    // 820 kg/m3 over the seats' fall.
    const fallM = 1 + 2 * 0.04;
    expect(flow?.headKpa).toBeGreaterThan(820 * 9.80665 * 1e-3);
    expect(flow?.headKpa).toBeLessThan(820 * 9.80665 * 1e-3 * (fallM + 0.1));
    const bent: Vec3[] = Array.from({ length: 200 }, (_, i): Vec3 => {
      const a = (i / 199) * Math.PI;
      return [120 * Math.cos(a), 120 * Math.sin(a), 0];
    });
    expect(flowIn({}, service, bent)?.bendsKpa).toBeGreaterThan(0);
  });
});

describe('pressureDrop', () => {
  it('turns at a tenth of the working pressure, and is no more than a note', () => {
    const at = (pressureKpa: number) =>
      found('pressureDrop', { insideDiameterMm: 10 }, { ...OIL, pressureKpa, flowLPerMin: 10, viscosityMm2PerS: 50 });
    const loss =
      flowIn({ insideDiameterMm: 10 }, { ...OIL, flowLPerMin: 10, viscosityMm2PerS: 50 })?.dropKpa.likely ?? 0;
    expect(at(loss * 10.1)).toEqual([]);
    expect(at(loss * 9.9)).toMatchObject([{ severity: 'note', unit: 'ratio' }]);
  });
});

describe('suctionPressure', () => {
  const suction: Service = { ...OIL, purpose: 'oil-suction', pressureKpa: -15, viscosityMm2PerS: 100 };

  it('turns where the worst pressure at the pump falls under 20 kPa below the air', () => {
    const at = (flowLPerMin: number) => found('suctionPressure', { insideDiameterMm: 12 }, { ...suction, flowLPerMin });
    // Laminar and level: the high edge is 32 nu rho v L / D^2. 20 kPa at v = 20e3 D^2 / (32 nu rho L).
    const speed = (20e3 * 0.012 ** 2) / (32 * 100e-6 * 820 * 1);
    const flow = speed * (Math.PI / 4) * 0.012 ** 2 * 6e4;
    expect(at(flow * 0.99)).toEqual([]);
    const [finding] = at(flow * 1.01);
    expect(finding).toMatchObject({ severity: 'look', rule: 'suction-least-pressure', limit: -20 });
    expect(finding?.message).toContain('END B');
  });

  it('forbids a hose that closes up before that', () => {
    const stays = { insideDiameterMm: 12, vacuumLimitKpa: -5 };
    const [finding] = found('suctionPressure', stays, { ...suction, flowLPerMin: 7 });
    expect(finding).toMatchObject({ severity: 'stop', limit: -5 });
    expect(found('suctionPressure', { ...stays, vacuumLimitKpa: -80 }, { ...suction, flowLPerMin: 1 })).toEqual([]);
  });
});

describe('drainCapacity', () => {
  // 5 degrees down over 400 mm; half full it carries half of pi g sin D^4 / (128 nu).
  const down: readonly Vec3[] = [
    [0, 0, 400 * Math.sin((5 * Math.PI) / 180)],
    [400 * Math.cos((5 * Math.PI) / 180), 0, 0],
  ];
  const half = (((Math.PI * 9.80665 * Math.sin((5 * Math.PI) / 180) * 0.012 ** 4) / (128 * 60e-6)) * 6e4) / 2;
  const at = (flowLPerMin: number) =>
    found(
      'drainCapacity',
      { insideDiameterMm: 12 },
      { ...OIL, purpose: 'turbo-oil-drain', pressureKpa: 2, viscosityMm2PerS: 60, flowLPerMin },
      down,
    );

  it('turns where half full it carries less than twice the flow', () => {
    expect(at((half / 2) * 0.98)).toEqual([]);
    const [finding] = at((half / 2) * 1.02);
    expect(finding).toMatchObject({ severity: 'look', rule: 'drain-capacity' });
    expect(finding?.measured).toBeCloseTo(2 / 1.02, 2);
  });
});
