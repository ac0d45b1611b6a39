import type { Severity } from '../../../../../shared/document/lay/schema.ts';
import type { End, EndMaterial, Hose } from '../../../../../shared/document/parts/schema.ts';
import type { Fluid, Project, Service } from '../../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

const OIL: Service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 120 };
const COOLANT = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 150, temperatureC: 110 } as const;

function of(service: Partial<Service>, hose: Partial<Hose> = {}, end: Partial<End> = {}, more: Partial<Project> = {}) {
  return spoilt(
    straightLay(),
    { runs: [sampleRun({ service: { ...OIL, ...service } })], ...more },
    { hoses: [sampleHose(hose)], ends: [sampleEnd(end)] },
  );
}

const pushed = (service: Partial<Service>, hose: Partial<Hose> = { core: 'nbr' }, joint: End['joint'] = 'push-on') =>
  of({ ...COOLANT, ...service }, hose, { joint });

const NONE = { limit: 0, kept: 0 } as const;
const STATED = { limit: 1, kept: 1, past: 0 } as const;

/** Ports of the same metal, or of another that stands so far from it. */
function joined(end: EndMaterial, port: EndMaterial, fluid: Fluid, vehicle?: 'boat'): Spoilt {
  const ports = [
    samplePort({ material: port }),
    samplePort({ id: 'p2', seatPoint: [500, 0, 0], axis: [-1, 0, 0], material: port }),
  ];
  return of({ fluid }, {}, { material: end }, { ports, ...(vehicle === undefined ? {} : { vehicle }) });
}

/** Metals of a joint 100 mV apart and 270: the series in sea water has nothing nearer its limit of 200 (docslib.org/doc/8174925). */
const metals = (apartMv: number): readonly [EndMaterial, EndMaterial] =>
  apartMv > 200 ? ['stainless', 'aluminium'] : ['stainless', 'brass'];

const conductive = (fluid: Fluid, severity: Severity): Mutation => ({
  check: 'staticCharge',
  rule: 'static-conductivity',
  severity,
  ...STATED,
  at: (marked) => of({ purpose: 'fuel', fluid }, { conductiveCore: marked === 1 }),
});

const marked = (otherwise: Partial<Hose>): Mutation => ({
  check: 'fuelMarking',
  rule: 'marine-fuel-marking',
  severity: 'look',
  ...STATED,
  at: (a1) => {
    const hose = a1 === 1 ? { marking: 'USCG TYPE A1-15' } : otherwise;
    return of({ purpose: 'fuel', fluid: 'petrol' }, hose, {}, { vehicle: 'boat' });
  },
});

/** An EPDM coolant hose straight along X, with the joint of an oil hose so far aside of its surface, 200 mm above. */
function underJoint(asideMm: number): Spoilt {
  const at = (id: string, y: number, z: number) => samplePort({ id, seatPoint: [id === 'p2' ? 500 : 250, y, z] });
  const oil = { a: { port: 'p3', end: 'end-8-0' }, b: { port: 'p4', end: 'end-8-0' } };
  return of(
    { ...COOLANT },
    { core: 'epdm', cover: 'rubber' },
    {},
    {
      ports: [samplePort(), at('p2', 0, 0), at('p3', 15.8 / 2 + asideMm, 200), at('p4', 900, 200)],
      runs: [sampleRun({ service: COOLANT }), sampleRun({ id: 'r2', name: 'Oil', ...oil })],
    },
  );
}

/** Ratings, materials and marks. Push-on 250 psi and 300 F: powermotiontech.com; A1: 33 CFR 183.540; five years: kitplanes.com. */
export const MATERIAL_MUTATIONS: readonly Mutation[] = [
  {
    check: 'pressureRating',
    rule: 'pressure-rating',
    severity: 'stop',
    limit: 10000,
    kept: 9999,
    past: 10001,
    at: (pressureKpa) => of({ pressureKpa }),
  },
  // MIL-DTL-17505F 4.7.7: at least 4 times the working pressure
  {
    check: 'pressureRating',
    rule: 'burst-multiple',
    severity: 'look',
    limit: 1000,
    kept: 990,
    past: 1010,
    at: (pressureKpa) => of({ pressureKpa }, { burstPressureKpa: 4000 }),
  },
  {
    check: 'vacuumKnown',
    rule: 'pressure-rating',
    severity: 'stop',
    limit: -40,
    kept: -39.9,
    past: -40.1,
    at: (pressureKpa) => of({ purpose: 'oil-suction', pressureKpa }, { vacuumLimitKpa: -40 }),
  },
  {
    check: 'vacuumKnown',
    rule: 'vacuum-known',
    severity: 'note',
    ...STATED,
    at: (known) => of({ purpose: 'oil-suction', pressureKpa: -20 }, known === 1 ? { vacuumLimitKpa: -90 } : {}),
  },
  {
    check: 'pushOn',
    rule: 'push-on-lifeline',
    severity: 'stop',
    ...NONE,
    past: 2,
    at: (ends) => (ends === 0 ? pushed({}) : pushed(OIL)),
  },
  {
    check: 'pushOn',
    rule: 'push-on-ptfe',
    severity: 'stop',
    ...NONE,
    past: 2,
    at: (ends) => (ends === 0 ? pushed({}) : pushed({}, { core: 'ptfe-smooth' })),
  },
  {
    check: 'pushOn',
    rule: 'push-on-pressure',
    severity: 'stop',
    limit: 1724,
    kept: 1723,
    past: 1725,
    at: (pressureKpa) => pushed({ pressureKpa }),
  },
  {
    check: 'pushOn',
    rule: 'push-on-temperature',
    severity: 'stop',
    limit: 149,
    kept: 148.9,
    past: 149.1,
    at: (temperatureC) => pushed({ temperatureC }),
  },
  {
    check: 'fluidCore',
    rule: 'core-suits-fluid',
    severity: 'stop',
    ...STATED,
    at: (grade) => of({}, { core: grade === 1 ? 'nbr' : 'epdm' }),
  },
  {
    check: 'fluidCore',
    rule: 'core-suits-fluid',
    severity: 'note',
    limit: 1,
    kept: 1,
    past: 0.5,
    at: (grade) => of({ fluid: 'petrol' }, { core: grade === 1 ? 'ptfe-smooth' : 'nbr' }),
  },
  {
    check: 'fluidCore',
    rule: 'core-suits-fluid',
    severity: 'note',
    ...STATED,
    at: (grade) => of({}, { core: grade === 1 ? 'nbr' : 'silicone', listedFluids: ['engine-oil'] }),
  },
  {
    check: 'fluidCore',
    rule: 'core-suits-fluid',
    severity: 'look',
    limit: 1,
    kept: 1,
    past: 0.5,
    at: (grade) => of({ fluid: 'petrol' }, { core: 'nbr', listedFluids: [grade === 1 ? 'petrol' : 'diesel'] }),
  },
  // 25 mm: common practice, no source; that EPDM swells in oil: trelleborg.com
  { check: 'drippedOn', rule: 'dripped-on', severity: 'note', limit: 25, kept: 25.2, past: 24.8, at: underJoint },
  marked({ marking: 'USCG TYPE B1-15' }),
  marked({}),
  {
    check: 'hoseLife',
    rule: 'hose-life',
    severity: 'look',
    ...NONE,
    past: 1,
    at: (past) => ({
      ...spoilt(straightLay(), { runs: [sampleRun({ madeOn: '2021-05' })] }, { hoses: [sampleHose({ core: 'nbr' })] }),
      today: past === 1 ? '2026-06-01' : '2026-05-31',
    }),
  },
  {
    check: 'endMetals',
    rule: 'ends-suit-fluid',
    severity: 'look',
    ...STATED,
    at: (grade) => of({ fluid: 'raw-water' }, {}, { material: grade === 1 ? 'brass' : 'aluminium' }),
  },
  {
    check: 'endMetals',
    rule: 'ends-suit-fluid',
    severity: 'note',
    limit: 1,
    kept: 1,
    past: 0.5,
    at: (grade) => of({ purpose: 'fuel', fluid: 'methanol' }, {}, { material: grade === 1 ? 'steel' : 'aluminium' }),
  },
  ...(['look', 'note'] as const).map(
    (severity): Mutation => ({
      check: 'endMetals',
      rule: 'galvanic-apart',
      severity,
      limit: 200,
      kept: 100,
      past: 270,
      coarse: 'the published series has no pair of these metals nearer to it',
      at: (apartMv) =>
        severity === 'look'
          ? joined(...metals(apartMv), 'raw-water')
          : joined(...metals(apartMv), 'engine-oil', 'boat'),
    }),
  ),
  conductive('petrol', 'stop'),
  conductive('diesel', 'look'),
];
