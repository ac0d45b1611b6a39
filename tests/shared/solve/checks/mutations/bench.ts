import type { Lay } from '../../../../../shared/document/lay/schema.ts';
import type { EndMaterial } from '../../../../../shared/document/parts/schema.ts';
import type { AsBuilt, Support } from '../../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleProject, sampleRun } from '../../../../arbitraries/projects.ts';
import { type Mutation, type Spoilt, spoilt } from './mutation.ts';

const CRIMPED = sampleEnd({ joint: 'crimp', crimpFromMm: 24.75, crimpToMm: 25.05, maxPressureKpa: 7000 });

interface Made {
  readonly lay?: Partial<Lay>;
  readonly end?: typeof CRIMPED;
  readonly today?: string;
}

/** The sample run, made and written down so: its hose bears 3500 kPa, its ends 7000. */
function made(asBuilt: AsBuilt, { lay = {}, end = CRIMPED, today }: Made = {}): Spoilt {
  const tables = { hoses: [sampleHose({ maxPressureKpa: 3500 })], ends: [end] };
  const built = spoilt(straightLay(lay), { runs: [sampleRun({ asBuilt })] }, tables);
  return today === undefined ? built : { ...built, today };
}

const PROOF = { on: '2026-05-12', pressureKpa: 5250 };
/** A day so many months and parts of 31 days after 12 May 2026. */
const after = (months: number): string => {
  const days = Math.round((months - 12) * 31);
  return `2027-05-${String(12 + days).padStart(2, '0')}`;
};
const DAY = 1 / 31;

/** What the bench wrote down. Crimp: 24.90 +/- 0.15 mm; proof: NAHAD, 1.5 times; age of the proof, US Army TM 1-1500-204-23-2: a year. */
const MADE: readonly Mutation[] = [
  {
    check: 'crimp',
    rule: 'crimp-diameter',
    severity: 'stop',
    limit: 0,
    kept: 0,
    past: 0.02,
    at: (mm) => made({ crimpMm: { a: [24.9], b: [24.9, 25.05 + mm] } }),
  },
  {
    check: 'crimp',
    rule: 'crimp-limits-known',
    severity: 'note',
    limit: 1,
    kept: 1,
    past: 0,
    at: (known) => made({ crimpMm: { a: [24.9] } }, { end: known === 1 ? CRIMPED : sampleEnd({ joint: 'crimp' }) }),
  },
  {
    check: 'proof',
    rule: 'proof-passed',
    severity: 'stop',
    limit: 0,
    kept: 0,
    past: 1,
    at: (failed) => made({ proof: { ...PROOF, failed: failed === 1 } }),
  },
  {
    check: 'proof',
    rule: 'proof-multiple',
    severity: 'look',
    limit: 5250,
    kept: 5260,
    past: 5240,
    at: (pressureKpa) => made({ proof: { ...PROOF, pressureKpa } }),
  },
  {
    check: 'proof',
    rule: 'proof-clock',
    severity: 'stop',
    limit: 0,
    kept: 0,
    past: 0.4,
    at: (deg) => made({ clockDeg: 268 + deg, proof: { ...PROOF, clockDeg: 268 } }),
  },
  {
    check: 'proof',
    rule: 'proof-clock',
    severity: 'note',
    limit: 3,
    kept: 2.95,
    past: 3.05,
    at: (deg) =>
      made(
        { proof: { ...PROOF, clockDeg: 268 } },
        { lay: { clock: { kind: 'angle', deg: 268 + deg, toleranceDeg: 3 } } },
      ),
  },
  {
    check: 'proof',
    rule: 'proof-age',
    severity: 'look',
    limit: 12,
    kept: 12,
    past: 12 + DAY,
    at: (months) => made({ proof: PROOF, fittedOn: after(months) }),
  },
  {
    check: 'inspection',
    rule: 'inspection-months',
    severity: 'look',
    limit: 12,
    kept: 12,
    past: 12 + DAY,
    at: (months) => made({ fittedOn: '2026-05-12' }, { today: after(months) }),
  },
  {
    check: 'inspection',
    rule: 'inspection-open',
    severity: 'look',
    limit: 0,
    kept: 0,
    past: 1,
    at: (open) =>
      made({
        fittedOn: '2026-05-12',
        inspections: [
          { on: '2026-11-12', found: 'braid worn bright', ...(open === 1 ? {} : { closedOn: '2026-11-20' }) },
        ],
      }),
  },
];

/** A fuel line from a port in the firewall, with what is in it of aluminium or of steel, or through a hole in it. */
function walled(port: EndMaterial, end: EndMaterial, seal: Support['seal'] = 'stuffing-box'): Spoilt {
  const through: Support = {
    id: 'wall',
    kind: 'pass-through',
    point: [250, 0, 0],
    axis: [1, 0, 0],
    seal,
    inFirewall: true,
  };
  const at = { arcLengthMm: 250, point: [250, 0, 0] as [number, number, number] };
  return spoilt(
    straightLay({ supports: [{ id: 'wall', kind: 'pass-through', proposed: false, at, axis: [1, 0, 0] }] }),
    {
      ports: [
        samplePort({ material: port, inFirewall: true }),
        samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] }),
      ],
      runs: [sampleRun({ supports: [through] })],
    },
    { ends: [sampleEnd({ material: end })] },
  );
}

const firewall = (severity: Mutation['severity'], past: Spoilt): Mutation => ({
  check: 'firewall',
  rule: 'firewall-fitting',
  severity,
  limit: 0,
  kept: 0,
  past: 1,
  at: (count) => (count === 1 ? past : walled('steel', 'steel')),
});

/** A hose whose END A stands on an engine that moves, with a clamp so many mm from its mouth, which is 20 mm from its shoulder. */
function held(mm: number): Spoilt {
  const still: [number, number] = [0, 0];
  const motion = {
    pivot: [0, 0, 0] as [number, number, number],
    rollDeg: [-2, 2] as [number, number],
    pitchDeg: still,
    yawDeg: still,
    shiftMm: { x: still, y: still, z: still },
  };
  const at = { arcLengthMm: 20 + mm, point: [20 + mm, 0, 0] as [number, number, number] };
  return spoilt(straightLay({ supports: [{ id: 'first', kind: 'clamp', proposed: false, at, axis: [1, 0, 0] }] }), {
    bay: { ...sampleProject().bay, bodies: [{ id: 'engine', name: 'Engine', parts: [], motion }] },
    ports: [
      samplePort({ body: 'engine' }),
      samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] }),
    ],
  });
}

export const BENCH_MUTATIONS: readonly Mutation[] = [
  ...MADE,
  firewall('look', walled('aluminium', 'steel')),
  firewall('look', walled('steel', 'steel', 'grommet')),
  firewall('note', walled('steel', 'aluminium')),
  // US Army AL0907 p. 59: about 3 in
  {
    check: 'firstSupport',
    rule: 'engine-first-support',
    severity: 'note',
    limit: 76.2,
    kept: 76,
    past: 76.4,
    at: held,
  },
];
