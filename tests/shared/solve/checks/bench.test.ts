import { describe, expect, it } from 'vitest';
import type { BuiltPose, Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { AsBuilt, Run } from '../../../../shared/document/project/schema.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun } from '../../../arbitraries/projects.ts';
import { resolved } from './context.ts';

// 24.90 +/- 0.15 mm
const CRIMPED = sampleEnd({ joint: 'crimp', crimpFromMm: 24.75, crimpToMm: 25.05, maxPressureKpa: 7000 });
const HOSE = sampleHose({ maxPressureKpa: 3500 });

interface Bench {
  readonly asBuilt: AsBuilt;
  readonly run?: Partial<Run>;
  readonly lay?: Partial<Lay>;
  readonly today?: string;
}

function found(check: string, { asBuilt, run = {}, lay = {}, today }: Bench, end = CRIMPED): Finding[] {
  const project = resolved({ runs: [sampleRun({ ...run, asBuilt })] }, { hoses: [HOSE], ends: [end] });
  return runChecks(project, [straightLay(lay)], today).filter((f) => f.check === check);
}

describe('crimps as measured', () => {
  it('one reading past the window forbids the hose; within, and at its edges, nothing is said', () => {
    const [stop, ...others] = found('crimp', { asBuilt: { crimpMm: { a: [24.9, 24.92], b: [25.17, 25.12] } } });
    expect(others).toEqual([]);
    expect(stop).toMatchObject({ severity: 'stop', rule: 'crimp-diameter' });
    expect(stop?.measured).toBeCloseTo(0.12, 9);
    expect(stop?.message).toContain('END B');
    expect(stop?.message).toContain('not tested');
    expect(stop?.mend).toContain('Crimp it again');
    expect(found('crimp', { asBuilt: { crimpMm: { b: [24.75, 25.05] } } })).toEqual([]);
  });

  it('too small is scrap', () => {
    expect(found('crimp', { asBuilt: { crimpMm: { a: [24.74] } } })[0]?.mend).toContain('Scrap');
  });

  it('is a note where the table lacks the window', () => {
    const [note] = found('crimp', { asBuilt: { crimpMm: { a: [24.9] } } }, sampleEnd({ joint: 'crimp' }));
    expect(note).toMatchObject({ severity: 'note', rule: 'crimp-limits-known' });
  });
});

describe('the proof test as written down', () => {
  const proof = { on: '2026-05-12', pressureKpa: 5250 };

  // NAHAD: fluoropolymer 1.5 times the working pressure of the weakest part: 3500 kPa
  it('asks for 1.5 times the weakest part', () => {
    expect(found('proof', { asBuilt: { proof } })).toEqual([]);
    const [low] = found('proof', { asBuilt: { proof: { ...proof, pressureKpa: 5200 } } });
    expect(low).toMatchObject({ severity: 'look', rule: 'proof-multiple', limit: 5250, measured: 5200 });
  });

  it('a hose that failed is not fitted', () => {
    expect(found('proof', { asBuilt: { proof: { ...proof, failed: true } } })[0]).toMatchObject({
      severity: 'stop',
      rule: 'proof-passed',
    });
  });

  it('an end turned after the test forbids the hose; the same clock does not, also a whole turn on', () => {
    const proved = { ...proof, clockDeg: 268 };
    const [turned] = found('proof', { asBuilt: { clockDeg: 270, proof: proved } });
    expect(turned).toMatchObject({ severity: 'stop', rule: 'proof-clock', measured: 2 });
    expect(turned?.message).toContain('not clocked again');
    expect(found('proof', { asBuilt: { clockDeg: 268, proof: proved } })).toEqual([]);
    expect(found('proof', { asBuilt: { clockDeg: 628, proof: proved } })).toEqual([]);
  });

  it('a plan that comes to ask another clock is a note, within its tolerance nothing', () => {
    const asBuilt: AsBuilt = { proof: { ...proof, clockDeg: 268 } };
    const planned = (deg: number): Partial<Lay> => ({ clock: { kind: 'angle', deg, toleranceDeg: 3 } });
    expect(found('proof', { asBuilt, lay: planned(271) })).toEqual([]);
    expect(found('proof', { asBuilt, lay: planned(272) })[0]).toMatchObject({ severity: 'note', measured: 4 });
  });

  // US Army TM 1-1500-204-23-2: tested again where the test is over a year old at installation
  it('a test of over a year ago when the hose is fitted is done again', () => {
    const fitted = (fittedOn: string) => found('proof', { asBuilt: { proof, fittedOn } });
    expect(fitted('2027-05-12')).toEqual([]);
    expect(fitted('2027-05-13')[0]).toMatchObject({ severity: 'look', rule: 'proof-age', limit: 12, unit: 'months' });
  });

  it('on the shelf it grows old by the day; without a day nothing is said', () => {
    expect(found('proof', { asBuilt: { proof }, today: '2027-05-12' })).toEqual([]);
    expect(found('proof', { asBuilt: { proof }, today: '2027-05-13' })[0]?.message).toContain('not fitted yet');
    expect(found('proof', { asBuilt: { proof } })).toEqual([]);
    // Fitted in time it does not grow old any more.
    expect(found('proof', { asBuilt: { proof, fittedOn: '2026-06-01' }, today: '2031-01-01' })).toEqual([]);
  });
});

describe('looking over again', () => {
  const hands: Partial<Lay> = {
    hands: {
      before: ['r2'],
      basis: [],
      places: [
        { at: { arcLengthMm: 120, point: [120, 0, 0] }, why: 'under the clamp', by: 'hand' },
        { at: { arcLengthMm: 300, point: [300, 0, 0] }, why: '9 mm from frame (sharp)', by: 'mirror' },
      ],
    },
  };
  const at = (today: string, more: Partial<AsBuilt> = {}) =>
    found('inspection', { asBuilt: { fittedOn: '2026-05-12', ...more }, lay: hands, today });

  // DIN 20066 and BGR 237 as quoted: every year
  it('falls due after twelve months, with where and with what', () => {
    expect(at('2027-05-12')).toEqual([]);
    const [due] = at('2027-05-13');
    expect(due).toMatchObject({ severity: 'look', rule: 'inspection-months' });
    expect(due?.message).toContain('due to be looked over on 2027-05-12');
    expect(due?.message).toContain('by hand: under the clamp');
    expect(due?.message).toContain('with a mirror: 9 mm from frame (sharp)');
  });

  it('counts from the last look; what was found stays open until it is closed', () => {
    const seen = (more: object): Finding[] =>
      at('2027-06-01', { inspections: [{ on: '2027-05-20', found: 'braid worn bright at the frame', ...more }] });
    expect(seen({})).toHaveLength(1);
    expect(seen({})[0]).toMatchObject({ severity: 'look', rule: 'inspection-open' });
    expect(seen({})[0]?.message).toContain('braid worn bright');
    expect(seen({ closedOn: '2027-05-25', photo: 'photos/frame.jpg' })).toEqual([]);
  });

  it('says nothing of a hose that is not fitted, or where the day is not said', () => {
    expect(found('inspection', { asBuilt: { cutLengthMm: 400 }, today: '2040-01-01' })).toEqual([]);
    expect(found('inspection', { asBuilt: { fittedOn: '2026-05-12' } })).toEqual([]);
  });
});

it('a rubber hose is as old as its roll, where nothing is printed along it', () => {
  const roll = {
    id: 'roll-7',
    hose: 'hose-8',
    lengthMm: 3000,
    cureDate: '2Q21',
    provenance: 'example',
    source: 'invented',
  } as const;
  const of = (today: string, run: Partial<Run> = {}): Finding[] => {
    const project = resolved(
      { runs: [sampleRun({ asBuilt: { roll: 'roll-7' }, ...run })] },
      { hoses: [sampleHose({ core: 'nbr' })], rolls: [roll] },
    );
    return runChecks(project, [straightLay()], today).filter((f) => f.check === 'hoseLife');
  };
  // five years from April 2021, the first month of its quarter
  expect(of('2026-04-30')).toEqual([]);
  expect(of('2026-05-01')[0]?.message).toContain('cure date 2Q21 of the roll roll-7');
  expect(of('2026-05-01', { madeOn: '2022-01' })).toEqual([]);
});

describe('what helps against an error within the tolerances', () => {
  const mend = (made: Partial<BuiltPose>): string | undefined => {
    const pose: BuiltPose = {
      name: 'made otherwise',
      cutLengthMm: straightLay().cutLengthMm,
      ownClockDeg: { a: 0, b: 0 },
      room: {},
      outcome: 'tight',
      slackLeftMm: -1,
      ...made,
    };
    const lay = straightLay({ tolerance: { lengthMm: 4.8, poses: [pose] } });
    return runChecks(resolved(), [lay]).find((f) => f.check === 'tolerance')?.mend;
  };

  it('is slack where it came out short, room where it came out long, a protractor where it is the clock', () => {
    const { cutLengthMm } = straightLay();
    expect(mend({ cutLengthMm: cutLengthMm - 4.8 })).toMatch(/^Give it more slack/);
    expect(mend({ cutLengthMm: cutLengthMm + 4.8 })).toMatch(/^Cut it to the short side/);
    expect(mend({ clockDeg: 93 })).toMatch(/protractor/);
  });
});
