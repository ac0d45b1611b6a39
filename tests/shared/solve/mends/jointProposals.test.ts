import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import type { HoseClamps, Run } from '../../../../shared/document/project/schema.ts';
import { clampsRight, fastJoints, hosesForClamps } from '../../../../shared/solve/mends/jointProposals.ts';
import type { MendContext } from '../../../../shared/solve/mends/proposal.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BARB = exampleEnd(0, { id: 'barb', joint: 'clamped', shoulderToMouthMm: 40 });
const CRIMPED = exampleEnd(0, { id: 'crimped', joint: 'crimp', material: 'aluminium' });
const SCREWED = exampleEnd(0, { id: 'screwed', joint: 'screw-together', material: 'steel' });
const EXHAUST: Run['service'] = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 };

interface Asked {
  readonly ends?: readonly [End, End];
  readonly table?: readonly End[];
  readonly clamps?: HoseClamps;
  readonly service?: Run['service'];
}

function contextOf(
  finding: Partial<Finding>,
  { ends = [BARB, BARB], table = [BARB, CRIMPED, SCREWED], clamps, service }: Asked = {},
): MendContext {
  const ports = [examplePort('a', {}), examplePort('b', { seatPoint: [500, 0, 0], axis: [-1, 0, 0] })] as const;
  const stated = clamps === undefined ? {} : { hoseClamps: clamps };
  const { runs } = oneRunProject([...ports], [...ends], exampleHose(), {
    a: { port: 'a', end: ends[0].id, ...stated },
    b: { port: 'b', end: ends[1].id },
    ...(service === undefined ? {} : { service }),
  });
  const hoses = [exampleHose(), exampleHose({ id: 'rubber', core: 'synthetic-rubber' })];
  return {
    tables: { hoses, ends: [...table], sleeves: [], adapters: [], clamps: [], rolls: [] },
    run: runs[0]!,
    lay: straightLay(),
    finding: {
      check: 'hoseClamps',
      run: 'run',
      severity: 'look',
      rule: 'hose-clamp-from-end',
      limit: 6.35,
      measured: 3,
      margin: -3.35,
      unit: 'mm',
      source: 's',
      message: 'm',
      ...finding,
    },
  };
}

describe('hose clamps put right', () => {
  const right = (clamps: HoseClamps, asked: Asked = {}, finding: Partial<Finding> = {}) =>
    clampsRight(contextOf(finding, { clamps, ...asked }));

  it('sit a quarter of an inch from the end of the hose, or as far as the project asks', () => {
    const [proposal] = right({ count: 1, fromHoseEndMm: 3 });
    expect(proposal).toMatchObject({ edit: { kind: 'hose-clamps', a: { count: 1, fromHoseEndMm: 6.4 } }, toGet: [] });
    expect(proposal?.edit).not.toHaveProperty('b');
    expect(proposal?.words).toBe(
      'The hose clamp with a screw, the nearest 6.4 mm (0.25 in) from the end of the hose, at END A',
    );
    expect(right({ count: 1, fromHoseEndMm: 3 }, {}, { limit: 10 })[0]?.edit).toMatchObject({
      a: { fromHoseEndMm: 10 },
    });
    expect(right({ count: 1, fromHoseEndMm: 8 })).toEqual([]);
  });

  // 33 CFR 183.564(b)(3) and (d)(1)
  it('are two on a filler where that is asked, and of half an inch where that is', () => {
    const two = { rule: 'filler-hose-clamps', limit: 2, unit: 'count' };
    expect(right({ count: 1, bandMm: 9 }, {}, two)[0]).toMatchObject({
      edit: { a: { count: 2, bandMm: 9 } },
      toGet: ['hose clamps at END A'],
    });
    const [wide] = right({ count: 2, bandMm: 9 }, {}, { rule: 'filler-clamp-band', limit: 12.7 });
    expect(wide).toMatchObject({ edit: { a: { count: 2, bandMm: 12.7 } }, toGet: ['hose clamps at END A'] });
    expect(wide?.words).toContain('bands of 12.7 mm');
  });

  it('are two on an exhaust, and go nearer to the end where the barb is too short for them as they sit', () => {
    const [proposal] = right({ count: 1 }, { service: EXHAUST }, { rule: 'exhaust-hose-clamps', limit: 2 });
    expect(proposal).toMatchObject({
      edit: { kind: 'hose-clamps', a: { count: 2 } },
      toGet: ['hose clamps at END A'],
    });
    // a barb of 40: two bands of 12.7 with 6.35 between them leave 8.25 before the first
    const near = right({ count: 2, fromHoseEndMm: 12, bandMm: 12.7 }, { service: EXHAUST })[0]?.edit;
    expect(near).toMatchObject({ a: { count: 2, fromHoseEndMm: expect.closeTo(8.25, 9) } });
  });

  it('get a screw where a spring alone holds fuel, and keep their spring where that is not asked', () => {
    const sprung = { count: 1, fromHoseEndMm: 8, spring: true };
    const [proposal] = right(sprung, {}, { rule: 'hose-clamps-spring', limit: 0 });
    expect(proposal).toMatchObject({ toGet: ['hose clamps at END A'] });
    expect(proposal?.edit).toEqual({ kind: 'hose-clamps', a: { count: 1, fromHoseEndMm: 8 } });
    expect(right({ ...sprung, fromHoseEndMm: 3 })[0]?.edit).toMatchObject({ a: { spring: true, fromHoseEndMm: 6.4 } });
  });

  it('are not proposed where nothing is stated of them', () => {
    expect(clampsRight(contextOf({}))).toEqual([]);
  });
});

describe('another joint', () => {
  const barred = { rule: 'hose-clamps-on-ptfe', limit: 0, measured: 1, margin: -1 };

  it('is a crimped or a screwed end of the same angle, its metal first, in the place of every clamped one', () => {
    expect(fastJoints(contextOf(barred))).toMatchObject([
      {
        edit: { kind: 'ends', a: 'screwed', b: 'screwed' },
        words: expect.stringMatching(/^Screwed together end at END A/),
      },
    ]);
    expect(fastJoints(contextOf(barred, { ends: [CRIMPED, BARB] }))[0]?.edit).toEqual({
      kind: 'end',
      side: 'b',
      end: 'screwed',
    });
  });

  it('is not proposed where the table has none, nor for clamps that only sit wrong', () => {
    expect(fastJoints(contextOf(barred, { table: [BARB] }))).toEqual([]);
    expect(fastJoints(contextOf({}))).toEqual([]);
  });

  it('or another hose, where the one at hand is PTFE', () => {
    expect(hosesForClamps(contextOf(barred)).map(({ edit }) => edit)).toEqual([{ kind: 'hose', hose: 'rubber' }]);
    expect(hosesForClamps(contextOf({}))).toEqual([]);
  });
});
