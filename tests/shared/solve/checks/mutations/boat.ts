import type { End, Hose } from '../../../../../shared/document/parts/schema.ts';
import type {
  AsBuilt,
  HoseClamps,
  Port,
  Project,
  Service,
  SystemTestRecord,
} from '../../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

const PETROL: Service = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 30, temperatureC: 40 };
const EXHAUST: Service = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 };
const FILLER: Service = { ...PETROL, purpose: 'fuel-fill', pressureKpa: 0 };
const MARKED = { core: 'synthetic-rubber', cover: 'rubber', marking: 'USCG TYPE A1-15' } as const;

interface Setting {
  readonly service?: Service;
  readonly vehicle?: Project['vehicle'];
  readonly hose?: Partial<Hose>;
  readonly end?: Partial<End>;
  readonly clamps?: HoseClamps;
  readonly port?: Partial<Port>;
  readonly asBuilt?: AsBuilt;
}

/** A petrol hose on a boat, END A over a barb with its hose clamps, END B crimped. */
function boat({ service = PETROL, vehicle = 'boat', hose, end, clamps, port, asBuilt }: Setting): Spoilt {
  const a = { port: 'p1', end: 'end-a', ...(clamps === undefined ? {} : { hoseClamps: clamps }) };
  const ports = [samplePort(port), samplePort({ id: 'p2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] })];
  const ends = [sampleEnd({ joint: 'crimp' }), sampleEnd({ id: 'end-a', joint: 'clamped', ...end })];
  return spoilt(
    straightLay(),
    { vehicle, runs: [sampleRun({ a, service, ...(asBuilt === undefined ? {} : { asBuilt }) })], ports },
    { hoses: [sampleHose({ ...MARKED, ...hose })], ends },
  );
}

const SOUND: HoseClamps = { count: 2, fromHoseEndMm: 8 };
/** An exhaust that held 4 psi for five minutes, or as told. */
function tested(record: Partial<SystemTestRecord>, service = EXHAUST): Spoilt {
  const systemTest = { on: '2026-05-12', pressureKpa: 27.6, holdS: 300, ...record };
  return boat({ service, clamps: SOUND, asBuilt: { systemTest } });
}

const NONE = { limit: 0, kept: 0, past: 1 } as const;
const STATED = { limit: 1, kept: 1, past: 0 } as const;

/** Hose clamps: a quarter of an inch of hose shown, 6.35 mm; two on an exhaust (ABYC P-1 as quoted). Rigid lines: four inches, 101.6 mm (33 CFR 183.562). */
export const BOAT_MUTATIONS: readonly Mutation[] = [
  {
    check: 'hoseClamps',
    rule: 'hose-clamp-from-end',
    severity: 'look',
    limit: 6.35,
    kept: 6.4,
    past: 6.3,
    at: (fromHoseEndMm) => boat({ clamps: { count: 1, fromHoseEndMm } }),
  },
  {
    // by hand: two bands of 12.7 from 6.35 on with 6.35 between them reach to 38.1
    check: 'hoseClamps',
    rule: 'hose-clamps-on-barb',
    severity: 'look',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (beyondMm) =>
      boat({
        clamps: { count: 2, fromHoseEndMm: 6.35, bandMm: 12.7 },
        end: { shoulderToMouthMm: 38.1 + beyondMm },
      }),
  },
  {
    check: 'hoseClamps',
    rule: 'exhaust-hose-clamps',
    severity: 'look',
    limit: 2,
    kept: 2,
    past: 1,
    at: (count) => boat({ service: EXHAUST, clamps: { ...SOUND, count } }),
  },
  {
    // 33 CFR 183.564(b)(3): two adjacent metallic hose clamps
    check: 'hoseClamps',
    rule: 'filler-hose-clamps',
    severity: 'look',
    limit: 2,
    kept: 2,
    past: 1,
    at: (count) => boat({ service: FILLER, clamps: { ...SOUND, count } }),
  },
  {
    // 33 CFR 183.564(d)(1): at least one-half inch
    check: 'hoseClamps',
    rule: 'filler-clamp-band',
    severity: 'look',
    limit: 12.7,
    kept: 12.8,
    past: 12.6,
    at: (bandMm) =>
      boat({ service: FILLER, clamps: { count: 2, fromHoseEndMm: 6.35, bandMm }, end: { shoulderToMouthMm: 60 } }),
  },
  {
    // 33 CFR 183.560(d)
    check: 'hoseClamps',
    rule: 'hose-clamps-spring',
    severity: 'look',
    limit: 0,
    kept: 0,
    past: 2,
    at: (sprung) => boat({ clamps: { ...SOUND, spring: sprung > 0 } }),
  },
  {
    check: 'hoseClamps',
    rule: 'hose-clamps-known',
    severity: 'note',
    ...STATED,
    at: (known) => boat(known === 1 ? { clamps: SOUND } : {}),
  },
  {
    check: 'hoseClamps',
    rule: 'hose-clamps-on-ptfe',
    severity: 'stop',
    ...NONE,
    at: (ends) => boat({ clamps: SOUND, hose: { core: ends === 1 ? 'ptfe-smooth' : 'nbr' } }),
  },
  {
    check: 'hoseClamps',
    rule: 'hose-clamps-lifeline',
    severity: 'look',
    ...NONE,
    at: (ends) => boat({ clamps: SOUND, vehicle: ends === 1 ? 'car' : 'boat' }),
  },
  ...(['look', 'note'] as const).map(
    (severity): Mutation => ({
      check: 'rigidLine',
      rule: 'rigid-line-clamp',
      severity,
      limit: 101.6,
      kept: 101.5,
      past: 101.7,
      at: (clampMm) =>
        boat({ port: { rigidLine: { clampMm } }, vehicle: severity === 'look' ? 'boat' : 'car', clamps: SOUND }),
    }),
  ),
  {
    check: 'rigidLine',
    rule: 'rigid-line-known',
    severity: 'note',
    ...STATED,
    at: (known) => boat({ port: { rigidLine: known === 1 ? { clampMm: 50 } : {} }, clamps: SOUND }),
  },
  {
    check: 'endMetals',
    rule: 'copper-off-aluminium',
    severity: 'look',
    ...NONE,
    at: (brass) =>
      boat({ port: { material: 'aluminium' }, end: { material: brass === 1 ? 'brass' : 'stainless' }, clamps: SOUND }),
  },
  {
    check: 'jointAccess',
    rule: 'joint-access',
    severity: 'note',
    ...STATED,
    at: (reached) => {
      const at = { arcLengthMm: 20, point: [20, 0, 0] as [number, number, number] };
      const place = { at, why: 'joint of END A', joint: 'a', by: reached === 1 ? 'hand' : 'mirror' } as const;
      const { project, lay } = boat({ clamps: SOUND });
      return { project, lay: { ...lay, hands: { before: [], basis: ['made up'], places: [place] } } };
    },
  },
  {
    check: 'systemTested',
    rule: 'system-test-passed',
    severity: 'stop',
    ...NONE,
    at: (failed) => tested({ failed: failed === 1 }),
  },
  {
    // ABYC P-1 as told: 4 psi = 27.579 kPa
    check: 'systemTested',
    rule: 'exhaust-test-pressure',
    severity: 'look',
    limit: 27.579029,
    kept: 27.6,
    past: 27.5,
    at: (pressureKpa) => tested({ pressureKpa }),
  },
  {
    check: 'systemTested',
    rule: 'exhaust-test-hold',
    severity: 'look',
    limit: 300,
    kept: 300,
    past: 299,
    at: (holdS) => tested({ holdS }),
  },
  {
    // 33 CFR 183.542: 3 psi = 20.684 kPa
    check: 'systemTested',
    rule: 'fuel-test-pressure',
    severity: 'look',
    limit: 20.684272,
    kept: 20.7,
    past: 20.6,
    at: (pressureKpa) => tested({ pressureKpa }, PETROL),
  },
];
