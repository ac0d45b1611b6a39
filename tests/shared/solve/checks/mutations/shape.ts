import type { Vec3 } from '../../../../../shared/base/vec3.ts';
import type { Breath, Lay } from '../../../../../shared/document/lay/schema.ts';
import { layAlong, rockWith, straightLay } from '../../../../arbitraries/lays.ts';
import { samplePort, sampleProject, sampleRun } from '../../../../arbitraries/projects.ts';
import { exactly, type Mutation, spoilt } from './mutation.ts';

const MIDDLE = { arcLengthMm: 250, point: [250, 0, 0] as [number, number, number] };
const BLOCK = { kind: 'skin', id: 'plain', part: 'block' } as const;

const radius = (provenAtLeastMm: number) =>
  spoilt(straightLay({ minRadius: { radiusMm: provenAtLeastMm + 1, provenAtLeastMm, limitMm: 107.9, at: MIDDLE } }));

/** Once and a half round, its turns as far apart, surface to surface, as is asked: the sample hose is 15.8 mm thick. */
function coil(apartMm: number): Vec3[] {
  return Array.from({ length: 1081 }, (_, i): Vec3 => {
    const a = (i * Math.PI) / 360;
    return [150 * Math.cos(a), 150 * Math.sin(a), ((apartMm + 15.8) * i) / 720];
  });
}

const breath = (change: number, more: Partial<Breath>) =>
  spoilt(straightLay({ breathing: [{ change, liveLengthMm: 460 * (1 + change), taut: false, ...more }] }));

/** Once round in the XY plane, twice up and twice down by so many mm: no plane leans to lie nearer. */
function saddle(mm: number): Vec3[] {
  return Array.from({ length: 721 }, (_, i): Vec3 => {
    const a = (i * Math.PI) / 360;
    return [200 * Math.cos(a), 200 * Math.sin(a), mm * Math.cos(2 * a)];
  });
}

const room = (mm: number): Lay => {
  const lay = straightLay();
  return { ...lay, ends: { ...lay.ends, b: { ...lay.ends.b, room: { roomMm: mm, part: 'block', point: [1, 0, 0] } } } };
};

/** A hose whose END A stands on an engine that moves, with so many mm to spare between its mouths: a gable of two legs. */
function spare(mm: number, changes: Partial<Lay> = {}) {
  const height = Math.sqrt((150 + mm / 2) ** 2 - 150 ** 2);
  const still: [number, number] = [0, 0];
  const motion = {
    pivot: [0, 0, 0] as [number, number, number],
    rollDeg: [-2, 2] as [number, number],
    pitchDeg: still,
    yawDeg: still,
    shiftMm: { x: still, y: still, z: still },
  };
  const bodies = [{ id: 'engine', name: 'Engine', parts: [], motion }];
  const corners: Vec3[] = [
    [0, 0, 0],
    [100, 0, 0],
    [250, height, 0],
    [400, 0, 0],
    [500, 0, 0],
  ];
  const ports = [samplePort({ body: 'engine' }), samplePort({ id: 'p2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] })];
  return spoilt(layAlong(corners, changes), { bay: { ...sampleProject().bay, bodies }, ports });
}

const LAID_SO = 'it is how the hose was laid, not what the lay is held to';

/** The lay, its bends, its slack. The sample hose: 100 mm inside, 15.8 mm thick, so 107.9 mm at the centreline; 0.1 % is as near as a curvature is known. */
export const SHAPE_MUTATIONS: readonly Mutation[] = [
  {
    check: 'laid',
    rule: 'laid',
    severity: 'stop',
    limit: 0,
    kept: 0,
    past: 1,
    at: (broken) => spoilt(straightLay({ outcome: broken > 0 ? 'near-miss' : 'laid' })),
  },
  { check: 'bendRadius', rule: 'bend-radius', severity: 'note', limit: 107.9, kept: 107.95, past: 107.85, at: radius },
  {
    check: 'bendRadius',
    rule: 'bend-radius',
    severity: 'stop',
    limit: 107.9 * 0.999,
    told: 107.9,
    kept: 107.8,
    past: 107.78,
    at: radius,
  },
  {
    check: 'selfContact',
    rule: 'self-contact',
    severity: 'stop',
    limit: 0,
    kept: 0.2,
    past: -0.2,
    at: (apartMm) =>
      spoilt(
        layAlong(coil(apartMm), {
          minRadius: { radiusMm: 150, provenAtLeastMm: 149, limitMm: 108, at: MIDDLE },
        }),
      ),
  },
  // FAA-H-8083-30 p. 7-19: two hose diameters, 2 x 15.8
  {
    check: 'straightTail',
    rule: 'straight-tail',
    severity: 'look',
    limit: 31.6,
    kept: 31.7,
    past: 31.5,
    at: (mm) => spoilt(straightLay({ straightTailMm: { a: 40, b: mm } })),
  },
  // NAVEDTRA 14105 p. 5-11/5-12 and FAA-H-8083-30 p. 7-19: 5 to 8 %; 3 and 10 % are common practice, no source
  ...(
    [
      ['slack-least', 'stop', 0.03, 0.0301, 0.0299],
      ['slack-wanted', 'look', 0.05, 0.0501, 0.0499],
      ['slack-most', 'look', 0.1, 0.0999, 0.1001],
    ] as const
  ).map(
    ([rule, severity, limit, kept, past]): Mutation => ({
      check: 'slack',
      rule,
      severity,
      limit,
      kept,
      past,
      at: (slack) => spoilt(straightLay({ slack })),
    }),
  ),
  {
    check: 'slack',
    rule: 'slack-wanted',
    severity: 'note',
    limit: 0.08,
    kept: 0.0799,
    past: 0.0801,
    at: (slack) => spoilt(straightLay({ slack })),
    limitStands: 'the handbook band ends where it ends, whatever is wanted within it',
  },
  // The taut length of the sample lay is 460 / 1.05 mm
  {
    check: 'breathing',
    rule: 'breathing-shorter',
    severity: 'stop',
    limit: 460 / 1.05,
    kept: 460 / 1.05 + 0.1,
    past: 460 / 1.05 - 0.1,
    at: (liveLengthMm) => breath(-0.04, { liveLengthMm, taut: liveLengthMm < 460 / 1.05 }),
    limitStands: LAID_SO,
  },
  ...([-0.04, 0.02] as const).flatMap((change): Mutation[] => {
    const rule = change < 0 ? 'breathing-shorter' : 'breathing-longer';
    const at: Mutation['at'] = (mm) => breath(change, { tightest: exactly(BLOCK, mm, 13) });
    const shared = { check: 'breathing', rule, at, limitStands: LAID_SO } as const;
    return [
      { ...shared, severity: 'look', limit: 13, kept: 13.1, past: 12.9 },
      { ...shared, severity: 'stop', limit: 0, told: 13, kept: 0.1, past: -0.1 },
    ];
  }),
  {
    check: 'onePlane',
    rule: 'one-plane',
    severity: 'look',
    limit: 5,
    kept: 4.9,
    past: 5.1,
    at: (mm) => spoilt(layAlong(saddle(mm)), { runs: [sampleRun({ onePlane: ['a'] })] }),
  },
  {
    check: 'endRoom',
    rule: 'end-room',
    severity: 'stop',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (mm) => spoilt(room(mm)),
  },
  {
    check: 'endRoom',
    rule: 'end-room',
    severity: 'look',
    limit: 5,
    kept: 5.1,
    past: 4.9,
    at: (mm) => spoilt(room(mm), { overrides: [{ rule: 'end-room', value: 5, reason: 'room for a ring spanner' }] }),
    limitStands: 'it is an override itself',
  },
  // US Army AL0907 p. 59 and NAVEDTRA 14018 p. 5-26: 1-1/2 in
  { check: 'engineSlack', rule: 'engine-slack', severity: 'look', limit: 38.1, kept: 38.3, past: 37.9, at: spare },
  {
    check: 'engineSlack',
    rule: 'engine-slack',
    severity: 'note',
    limit: 38.1,
    kept: 38.3,
    past: 37.9,
    at: (mm) => spare(mm, { rock: rockWith({}) }),
  },
];
