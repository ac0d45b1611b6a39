import type { BuiltPose, RockExtreme, TaperPose } from '../../../../../shared/document/lay/schema.ts';
import { handsWith, nutWith, tightNut } from '../../../../arbitraries/hands.ts';
import { rockWith, straightLay } from '../../../../arbitraries/lays.ts';
import { sampleRun, sampleSleeve } from '../../../../arbitraries/projects.ts';
import { exactly, type Mutation, type Spoilt, spoilt } from './mutation.ts';

const PLACE = { arcLengthMm: 200, point: [200, 0, 0] as [number, number, number] };
const BLOCK = { kind: 'skin', id: 'plain', part: 'block' } as const;
const MANIFOLD = { kind: 'skin', id: 'exhaust', part: 'exhaust-left' } as const;
const COUNTED = 'it counts poses without a lay at rest: none is none';

/** The figures that a hose laid somewhere else than planned is judged by. */
type Posed = Pick<BuiltPose, 'outcome' | 'slackLeftMm'> &
  Partial<Pick<BuiltPose, 'minRadius' | 'tightest' | 'twistDeg'>>;

const slackLeft = (slackLeftMm: number): Posed => ({ outcome: slackLeftMm < 0 ? 'tight' : 'lies', slackLeftMm });
const bent = (provenAtLeastMm: number): Posed => ({ ...slackLeft(20), minRadius: { provenAtLeastMm, at: PLACE } });
const near = (mm: number, to: Parameters<typeof exactly>[0] = BLOCK): Posed => ({
  ...slackLeft(20),
  tightest: exactly(to, mm, 13),
});
const wrung = (twistDeg: number): Posed => ({ ...slackLeft(20), twistDeg });
const restless = (count: number): Posed => ({ outcome: count > 0 ? 'unsettled' : 'lies', slackLeftMm: 20 });
const roomOf = (roomMm: number) => ({ a: { roomMm, part: 'block', point: [0, 0, 0] as [number, number, number] } });

/** Where each figure turns: slack at none, 107.9 mm to 0.1 %, the clearance that is asked, 7 degrees, an end's room. */
const SLACK = { limit: 0, kept: 0.1, past: -0.1 } as const;
const RADIUS = { limit: 107.9 * 0.999, told: 107.9, kept: 107.8, past: 107.78 } as const;
const CLEARANCE = { limit: 13, kept: 13.1, past: 12.9 } as const;
const TOUCH = { limit: 0, told: 13, kept: 0.1, past: -0.1 } as const;
// hose trade only: 7 degrees
const TWIST = { limit: 7, kept: 6.9, past: 7.1 } as const;
const ROOM = { limit: 0, kept: 0.1, past: -0.1 } as const;
const NONE = { limit: 0, kept: 0, past: 1 } as const;

function built(check: 'asBuilt' | 'tolerance'): Mutation[] {
  const severity = check === 'asBuilt' ? 'stop' : 'look';
  const of = (posed: Posed, room: BuiltPose['room'] = {}): Spoilt => {
    const pose: BuiltPose = { name: 'as measured', cutLengthMm: 690, ownClockDeg: { a: 0, b: 0 }, room, ...posed };
    return spoilt(straightLay(check === 'asBuilt' ? { built: pose } : { tolerance: { lengthMm: 4.8, poses: [pose] } }));
  };
  return [
    { check, rule: 'built-slack', severity, ...SLACK, at: (mm) => of(slackLeft(mm)) },
    { check, rule: 'built-fits', severity, ...RADIUS, at: (mm) => of(bent(mm)) },
    { check, rule: 'built-fits', severity, ...CLEARANCE, at: (mm) => of(near(mm)) },
    {
      check,
      rule: 'end-room',
      severity,
      ...ROOM,
      at: (mm) => of(slackLeft(20), roomOf(mm)),
      limitStands: 'an end that stands in the bay cannot be fitted, whatever room is asked beside it',
    },
    { check, rule: 'built-twist', severity: 'look', ...TWIST, at: (deg) => of(wrung(deg)) },
    {
      check,
      rule: 'built-fits',
      severity: 'look',
      limit: 1,
      kept: 1,
      past: 0,
      at: (lies) => of(restless(1 - lies)),
      coarse: COUNTED,
    },
  ];
}

const rocked = (posed: Partial<RockExtreme>) => spoilt(straightLay({ rock: rockWith(posed) }));

const struck = (roomMm: number) => rocked({ endRoom: { end: 'a', roomMm, part: 'engine', point: [0, 20, 0] } });

/** Bodies at the extremes of their motion. */
const ROCK: readonly Mutation[] = [
  { check: 'rock', rule: 'rock-slack', severity: 'stop', ...SLACK, at: (mm) => rocked(slackLeft(mm)) },
  { check: 'rock', rule: 'rock-radius', severity: 'stop', ...RADIUS, at: (mm) => rocked(bent(mm)) },
  { check: 'rock', rule: 'rock-clearance', severity: 'look', ...CLEARANCE, at: (mm) => rocked(near(mm)) },
  {
    check: 'rock',
    rule: 'rock-clearance',
    severity: 'stop',
    ...TOUCH,
    at: (mm) => rocked(near(mm)),
    limitStands: 'a touch is a touch',
  },
  { check: 'rock', rule: 'rock-clearance', severity: 'stop', ...CLEARANCE, at: (mm) => rocked(near(mm, MANIFOLD)) },
  { check: 'rock', rule: 'rock-end-room', severity: 'look', limit: 3, kept: 3.05, past: 2.95, at: struck },
  {
    check: 'rock',
    rule: 'rock-end-room',
    severity: 'stop',
    limit: 0,
    told: 3,
    kept: 0.05,
    past: -0.05,
    at: struck,
    limitStands: 'a blow is a blow',
  },
  { check: 'rock', rule: 'rock-twist', severity: 'look', ...TWIST, at: (deg) => rocked(wrung(deg)) },
  { check: 'rock', rule: 'rock-settles', severity: 'look', ...NONE, at: (n) => rocked(restless(n)) },
];

function turned(posed: Posed, room: TaperPose['room'] = {}, asks = 0): Spoilt {
  const clocks = [{ end: 'a' as const, adapter: 'npt-elbow', clockDeg: 30 }];
  const pose: TaperPose = { name: 'npt-elbow at 30 degrees', clocks, ownClockDeg: { a: 0, b: 0 }, room, ...posed };
  const ranges = [{ end: 'a' as const, adapter: 'npt-elbow', fromDeg: 0, toDeg: 30, laidAtDeg: 15 }];
  const worst = { slackLeft: 0, minRadius: 0, clearance: 0, room: 0, twist: 0 };
  const overrides = asks === 0 ? [] : [{ rule: 'end-room', value: asks, reason: 'room for a ring spanner' }];
  return spoilt(straightLay({ taper: { ranges, poses: [pose], worst } }), { overrides });
}

/** A taper thread at the worst of its clocks. */
const TAPER: readonly Mutation[] = [
  { check: 'taperRange', rule: 'taper-slack', severity: 'stop', ...SLACK, at: (mm) => turned(slackLeft(mm)) },
  { check: 'taperRange', rule: 'taper-range', severity: 'stop', ...RADIUS, at: (mm) => turned(bent(mm)) },
  { check: 'taperRange', rule: 'taper-range', severity: 'stop', ...CLEARANCE, at: (mm) => turned(near(mm)) },
  { check: 'taperRange', rule: 'end-room', severity: 'stop', ...ROOM, at: (mm) => turned(slackLeft(20), roomOf(mm)) },
  {
    check: 'taperRange',
    rule: 'end-room',
    severity: 'look',
    limit: 5,
    kept: 5.1,
    past: 4.9,
    at: (mm) => turned(slackLeft(20), roomOf(mm), 5),
    limitStands: 'it is an override itself',
  },
  { check: 'taperRange', rule: 'taper-twist', severity: 'look', ...TWIST, at: (deg) => turned(wrung(deg)) },
  { check: 'taperRange', rule: 'rock-settles', severity: 'look', ...NONE, at: (n) => turned(restless(n)) },
];

/** A pass-through whose hole is so wide: the sample hose 15.8 mm, its ends 22 mm. */
function throughHole(holeMm: number): Spoilt {
  const support = { id: 'g', kind: 'pass-through', point: [250, 0, 0], axis: [1, 0, 0] } as const;
  const placed = { ...support, axis: [1, 0, 0] as [number, number, number], proposed: false, at: PLACE };
  const stated = { ...support, point: PLACE.point, axis: placed.axis, seal: 'grommet' as const, holeMm };
  return spoilt(straightLay({ supports: [placed] }), { runs: [sampleRun({ supports: [stated] })] });
}

const hands = (...nuts: Parameters<typeof handsWith>): Spoilt => spoilt(straightLay({ hands: handsWith(...nuts) }));

/** Hands and the bench. 30 degrees of swing are common practice, no source. */
const HANDS: readonly Mutation[] = [
  {
    check: 'assembly',
    rule: 'sleeve-goes-over',
    severity: 'look',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (overMm) =>
      spoilt(
        straightLay(),
        { runs: [sampleRun({ sleeve: 'sleeve-16' })] },
        { sleeves: [sampleSleeve({ insideDiameterMm: 15.8 + overMm })] },
      ),
  },
  {
    check: 'assembly',
    rule: 'hole-over-hose',
    severity: 'stop',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (overMm) => throughHole(15.8 + overMm),
  },
  {
    check: 'assembly',
    rule: 'hole-over-end',
    severity: 'look',
    limit: 0,
    kept: 0.1,
    past: -0.1,
    at: (overMm) => throughHole(22 + overMm),
  },
  ...(
    [
      ['look', (deg) => hands(tightNut(deg), nutWith())],
      ['stop', (deg) => hands(tightNut(deg), tightNut(deg))],
      ['note', (deg) => hands(nutWith(), tightNut(deg, { alone: tightNut(80).swing, blockedBy: ['r2'] }))],
    ] as const satisfies readonly (readonly ['look' | 'stop' | 'note', Mutation['at']])[]
  ).map(
    ([severity, at]): Mutation => ({
      check: 'wrenchAccess',
      rule: 'wrench-swing',
      severity,
      limit: 30,
      kept: 30.1,
      past: 29.9,
      at,
    }),
  ),
  {
    check: 'secondWrench',
    rule: 'second-wrench',
    severity: 'look',
    limit: 1,
    kept: 1,
    past: 0,
    at: (fits) => hands(nutWith(), nutWith({ second: { hexMm: 22, assumed: false, fits: fits === 1 } })),
  },
];

export const MADE_MUTATIONS: readonly Mutation[] = [
  ...built('asBuilt'),
  ...built('tolerance'),
  ...ROCK,
  ...TAPER,
  ...HANDS,
];
