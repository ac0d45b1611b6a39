import { degreesToRadians } from '../../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../../shared/base/vec3.ts';
import type { Clearance, Lay, Severity } from '../../../../../shared/document/lay/schema.ts';
import type { Clamp } from '../../../../../shared/document/parts/schema.ts';
import type { Bundle, Project, Run, Skin, Support } from '../../../../../shared/document/project/schema.ts';
import { heatAlong } from '../../../../arbitraries/heat.ts';
import { layAlong, rockWith, straightLay } from '../../../../arbitraries/lays.ts';
import { sampleClamp, samplePort, sampleProject, sampleRun } from '../../../../arbitraries/projects.ts';
import { exactly, type Mutation, type Spoilt, spoilt } from './mutation.ts';

const skin = (id: string): Clearance['to'] => ({ kind: 'skin', id });
const OTHER = { kind: 'run', id: 'r2' } as const;
const LOOM: Skin = { id: 'loom', name: 'Loom', kind: 'wiring', parts: ['loom'] };

/** The sample project with a second run beside the first, and a loom. */
function twoRuns(run: Partial<Run> = {}, other: Partial<Run> = {}, bundles: Bundle[] = []): Partial<Project> {
  const { bay } = sampleProject();
  return {
    bay: { ...bay, skins: [...bay.skins, LOOM] },
    ports: ['p1', 'p2', 'p3', 'p4'].map((id, i) => samplePort({ id, seatPoint: [0, 100 * i, 0] })),
    runs: [
      sampleRun(run),
      sampleRun({
        id: 'r2',
        name: 'Run 2',
        a: { port: 'p3', end: 'end-8-0' },
        b: { port: 'p4', end: 'end-8-0' },
        ...other,
      }),
    ],
    bundles,
  };
}

const beside = (to: Clearance['to'], mm: number, bundles: Bundle[] = []): Spoilt =>
  spoilt(straightLay({ clearances: [exactly(to, mm)] }), twoRuns({}, {}, bundles));
/** Measured to the limit, proven to a little less. */
const proven = (to: Clearance['to'], limit: number, mm: number): Spoilt =>
  spoilt(straightLay({ clearances: [{ ...exactly(to, limit), provenAtLeastMm: mm }] }));
const rubbing = (mm: number): Spoilt => spoilt(straightLay({ rock: rockWith({ rubs: [exactly(skin('tub'), mm)] }) }));

/**
 * Clearances. 12 mm: light-aircraft technical manual JTM001-1 13.3.4; wiring 2 and 6 in: FAA AC 43.13-1B 11-96w; heat 3 in:
 * Street Rodder and N.J.A.C. 13:62-4.16, 6 in: Stinson owners; the others are common practice, no source.
 */
const CLEARANCES: readonly Mutation[] = [
  ...(
    [
      ['clearance', 'clearance-plain', 'stop', 'plain', 12],
      ['clearance', 'clearance-sharp-edge', 'stop', 'bracket', 25],
      ['clearance', 'clearance-composite', 'stop', 'tub', 25],
      ['clearance', 'clearance-moving', 'stop', 'belt', 25],
      ['clearance', 'clearance-wiring', 'stop', 'loom', 50.8],
      ['wiring', 'wiring-preferred', 'note', 'loom', 152.4],
      ['heatDistance', 'clearance-hot', 'stop', 'exhaust', 76.2],
      ['heatDistance', 'heat-sleeve-within', 'look', 'exhaust', 152.4],
      ['chafe', 'chafe-reach', 'look', 'tub', 25],
    ] as const
  ).map(
    ([check, rule, severity, id, limit]): Mutation => ({
      check,
      rule,
      severity,
      limit,
      kept: limit + 0.1,
      past: limit - 0.1,
      at: (mm) => beside(skin(id), mm),
    }),
  ),
  {
    check: 'clearance',
    rule: 'clearance-plain',
    severity: 'note',
    limit: 12,
    kept: 12,
    past: 11.95,
    at: (mm) => proven(skin('plain'), 12, mm),
    limitStands: 'only the proof is short of it',
  },
  {
    check: 'heatDistance',
    rule: 'clearance-hot',
    severity: 'note',
    limit: 76.2,
    kept: 76.2,
    past: 76.15,
    at: (mm) => proven(skin('exhaust'), 76.2, mm),
    limitStands: 'only the proof is short of it',
  },
  ...(
    [
      ['clearance', 'look', 12, 12],
      ['clearance', 'stop', 0, 12],
      ['chafe', 'look', 12, 12],
    ] as const
  ).map(
    ([check, severity, limit, told]): Mutation => ({
      check,
      rule: 'hose-spacing',
      severity,
      limit,
      told,
      kept: limit + 0.1,
      past: limit - 0.1,
      at: (mm) => beside(OTHER, mm),
      ...(limit === 0 ? { limitStands: 'hoses do not pass through each other' } : {}),
    }),
  ),
  {
    check: 'chafe',
    rule: 'chafe-reach',
    severity: 'stop',
    limit: 0,
    told: 25,
    kept: 0.1,
    past: -0.1,
    at: (mm) => beside(skin('tub'), mm),
    limitStands: 'a touch is a touch',
  },
  {
    check: 'chafe',
    rule: 'hose-spacing',
    severity: 'note',
    limit: 12,
    told: 0,
    kept: 12.1,
    past: 11.9,
    at: (mm) => beside(OTHER, mm, [{ id: 'b', name: 'Both', runs: ['r1', 'r2'] }]),
    limitStands: 'the bundle states its own',
  },
  { check: 'chafe', rule: 'chafe-rock', severity: 'look', limit: 3, kept: 3.05, past: 2.95, at: rubbing },
  {
    check: 'chafe',
    rule: 'chafe-rock',
    severity: 'stop',
    limit: 0,
    told: 3,
    kept: 0.1,
    past: -0.1,
    at: rubbing,
    limitStands: 'a touch is a touch',
  },
];

const HELD: Support = { id: 'c', kind: 'clamp', point: [250, 0, 0], axis: [1, 0, 0], part: 'p' };
const placed = (arcLengthMm: number, point: Vec3, proposed = false): Lay['supports'][number] => ({
  id: 'c',
  kind: 'clamp',
  proposed,
  at: { arcLengthMm, point: [...point] as [number, number, number] },
  axis: [1, 0, 0],
});

const clamped = (changes: Partial<Clamp>, lay: Partial<Lay> = {}): Spoilt =>
  spoilt(
    straightLay({ supports: [placed(250, [250, 0, 0])], ...lay }),
    { runs: [sampleRun({ supports: [HELD] })] },
    { clamps: [sampleClamp(changes)] },
  );

/** A clamp 15 mm wide in the middle of a quarter circle on which the hose turns by so many degrees in it. */
function onBend(deg: number, proposed: boolean): Spoilt {
  const radiusMm = 15 / degreesToRadians(deg);
  const arc = Array.from({ length: 901 }, (_, i): Vec3 => {
    const a = degreesToRadians(i / 10);
    return [radiusMm * Math.sin(a), radiusMm * (1 - Math.cos(a)), 0];
  });
  return spoilt(layAlong(arc, { supports: [placed((Math.PI * radiusMm) / 4, arc[450] as Vec3, proposed)] }));
}

/** A clamp that the program proposes in the middle of the hose, so far from a skin of this kind. */
function footAt(mm: number, skin = 'tub'): Spoilt {
  const lay = straightLay();
  const half = lay.cutLengthMm / 2;
  const at = lay.centreline.points[Math.floor(lay.centreline.points.length / 2)] as Vec3;
  const near = [
    { to: { kind: 'skin' as const, id: skin }, clearanceMm: [mm], askedMm: [0], parts: ['tub'], part: [0] },
  ];
  const profile = { reachMm: 150, arcLengthMm: [half], radiusMm: [10_000], heightMm: [0], near };
  return spoilt({ ...lay, profile, supports: [placed(half, at, true)] });
}

const hotClamp = (likely: number, high: number): Spoilt =>
  clamped({}, { heat: heatAlong({ low: 60, likely, high }, { low: 60, likely: 70, high: 80 }) });

function pressed(kpaApart: number, bundled: boolean): Spoilt {
  const service = sampleRun().service;
  const pressureKpa = service.pressureKpa + kpaApart;
  const other = { supports: [HELD], service: { ...service, pressureKpa } };
  const bundles = bundled ? [{ id: 'b', name: 'Both', runs: ['r1', 'r2'] }] : [];
  return spoilt(straightLay(), twoRuns({ supports: [HELD] }, other, bundles), { clamps: [sampleClamp()] });
}

function hole(stated: Pick<Support, 'seal'>): Spoilt {
  const support: Support = { id: 'c', kind: 'pass-through', point: [250, 0, 0], axis: [1, 0, 0], ...stated };
  const lay = straightLay({ supports: [{ ...placed(250, [250, 0, 0]), kind: 'pass-through' }] });
  return spoilt(lay, { runs: [sampleRun({ supports: [support] })] });
}

const either = ['look', 'note'] as const satisfies readonly Severity[];

/** Clamps and pass-throughs. 24 in printed as 610 mm: NAVEDTRA 14105; 10 degrees and 1000 kPa are common practice, no source. */
const HOLDS: readonly Mutation[] = [
  {
    check: 'clampSpacing',
    rule: 'clamp-spacing',
    severity: 'look',
    limit: 610,
    kept: 609,
    past: 611,
    // Mouths stand 20 mm inside the shoulders.
    at: (mm) =>
      spoilt(
        layAlong([
          [0, 0, 0],
          [mm + 40, 0, 0],
        ]),
      ),
  },
  ...either.map(
    (severity): Mutation => ({
      check: 'clampPlace',
      rule: 'clamp-on-bend',
      severity,
      limit: 10,
      kept: 9.8,
      past: 10.2,
      at: (deg) => onBend(deg, severity === 'note'),
    }),
  ),
  { check: 'clampFoot', rule: 'clamp-foot', severity: 'look', limit: 100, kept: 99.9, past: 100.1, at: footAt },
  // The sample hose is 15.8 mm thick: a clamp that begins or ends a little to the wrong side of that does not fit.
  ...[
    (wrong: number): Spoilt => clamped({ holdsToMm: 15.8 - 0.1 * wrong }),
    (wrong: number): Spoilt => clamped({ holdsFromMm: 15.8 + 0.1 * wrong }),
  ].map(
    (at): Mutation => ({ check: 'clampFits', rule: 'clamp-fits', severity: 'look', limit: 0, kept: 0, past: 1, at }),
  ),
  ...either.map(
    (severity): Mutation => ({
      check: 'clampHeat',
      rule: 'clamp-heat',
      severity,
      limit: 200,
      kept: 199.9,
      past: 200.1,
      at: (deg) => (severity === 'look' ? hotClamp(deg, deg) : hotClamp(150, deg)),
    }),
  ),
  ...(['clampPressure', 'bundlePressure'] as const).map(
    (check): Mutation => ({
      check,
      rule: 'bundle-pressure',
      severity: 'look',
      limit: 1000,
      kept: 999,
      past: 1001,
      at: (kpa) => pressed(kpa, check === 'bundlePressure'),
    }),
  ),
  ...either.map(
    (severity): Mutation => ({
      check: 'passThrough',
      rule: 'pass-through-sealed',
      severity,
      limit: 1,
      kept: 1,
      past: 0,
      at: (sealed) => hole(sealed === 1 ? { seal: 'grommet' } : severity === 'look' ? { seal: 'none' } : {}),
    }),
  ),
];

export const NEAR_MUTATIONS: readonly Mutation[] = [...CLEARANCES, ...HOLDS];
