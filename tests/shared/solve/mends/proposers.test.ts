import { describe, expect, it } from 'vitest';
import type { Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { PartTables } from '../../../../shared/document/parts/schema.ts';
import { CHECK_NAMES, type CheckName } from '../../../../shared/document/wording/findingWords.ts';
import { ownWay } from '../../../../shared/solve/mends/bundleProposals.ts';
import { otherAngles, otherMaterials } from '../../../../shared/solve/mends/endProposals.ts';
import {
  clampsBetween,
  evenFall,
  hotterClamp,
  moveClamp,
  standOff,
  widerHole,
} from '../../../../shared/solve/mends/holdProposals.ts';
import { moreSlack } from '../../../../shared/solve/mends/lengthProposals.ts';
import { sleeves, sleeveWhereAsked, tighterHoses, widerSleeves } from '../../../../shared/solve/mends/partProposals.ts';
import type { MendContext } from '../../../../shared/solve/mends/proposal.ts';
import { PROPOSERS } from '../../../../shared/solve/mends/proposers.ts';
import { largerSizes, largerWhereAsked, smallerSizes } from '../../../../shared/solve/mends/sizeProposals.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';
import { clearanceTo, straightLay } from '../../../arbitraries/lays.ts';
import { sampleClamp, sampleSleeve } from '../../../arbitraries/projects.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

type Vec3 = [number, number, number];
const ENDS = [0, 30, 45, 90].map((angle) => exampleEnd(angle));
const TABLES: PartTables = {
  hoses: [
    exampleHose(),
    exampleHose({ id: 'tighter', minBendRadiusMm: 50 }),
    exampleHose({ id: 'wider', minBendRadiusMm: 120 }),
    exampleHose({ id: 'small', dash: 6, minBendRadiusMm: 40 }),
  ],
  ends: [
    ...ENDS,
    exampleEnd(45, { id: 'alu-45', material: 'aluminium' }),
    exampleEnd(45, { id: 'odd', seat: 'other' }),
  ],
  sleeves: [sampleSleeve(), sampleSleeve({ id: 'tight', insideDiameterMm: 12 })],
  adapters: [],
  clamps: [],
  rolls: [],
};

function contextOf(finding: Partial<Finding>, lay: Lay = straightLay()): MendContext {
  const ports = [examplePort('a', {}), examplePort('b', { seatPoint: [500, 0, 0], axis: [-1, 0, 0] })] as const;
  const { runs } = oneRunProject([...ports], [ENDS[2]!, ENDS[0]!], exampleHose());
  return {
    tables: TABLES,
    run: runs[0]!,
    lay,
    finding: {
      check: 'clearance',
      run: 'run',
      severity: 'look',
      rule: 'clearance-plain',
      limit: 20,
      measured: 12,
      margin: -8,
      unit: 'mm',
      source: 's',
      message: 'm',
      ...finding,
    },
  };
}

describe('what is proposed', () => {
  it('has a list for checks that there are, and none for others', () => {
    for (const name of Object.keys(PROPOSERS)) expect(CHECK_NAMES).toContain(name as CheckName);
  });

  it('of ends: the nearest angle first, at either end, and only what fits', () => {
    const angles = otherAngles(contextOf({})).map(({ edit }) => edit);
    expect(angles).toEqual([
      { kind: 'end', side: 'a', end: 'end-30' },
      { kind: 'end', side: 'b', end: 'end-30' },
      { kind: 'end', side: 'a', end: 'end-0' },
      { kind: 'end', side: 'a', end: 'end-90' },
      { kind: 'end', side: 'b', end: 'end-45' },
      { kind: 'end', side: 'b', end: 'end-90' },
    ]);
    expect(otherMaterials(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'end', side: 'a', end: 'alu-45' }]);
  });

  it('of hoses and sleeves: of the size of the run, that bend tighter, that go over it', () => {
    expect(tighterHoses(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'hose', hose: 'tighter' }]);
    expect(sleeves(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'sleeve', sleeve: 'sleeve-16' }]);
  });

  it('of what does not go over or through: a sleeve that does, a hole as wide as is asked', () => {
    const narrow = contextOf({ rule: 'sleeve-goes-over', margin: -4 });
    const sleeved = { ...narrow, run: { ...narrow.run, sleeve: sampleSleeve({ id: 'tight', insideDiameterMm: 12 }) } };
    expect(widerSleeves(sleeved).map(({ edit }) => edit)).toEqual([{ kind: 'sleeve', sleeve: 'sleeve-16' }]);
    expect(widerSleeves(contextOf({ rule: 'hole-over-hose' }))).toEqual([]);
    const holes = [100, 300].map((x, i) => ({
      support: {
        id: `h${i}`,
        kind: 'pass-through' as const,
        point: [x, 0, 0] as Vec3,
        axis: [1, 0, 0] as Vec3,
        holeMm: 20,
      },
      laid: {
        id: `h${i}`,
        kind: 'pass-through' as const,
        at: { arcLengthMm: x, point: [x, 0, 0] as Vec3 },
        axis: [1, 0, 0] as Vec3,
        proposed: false,
      },
    }));
    const lay = straightLay({ supports: holes.map(({ laid }) => laid) });
    const at = holes[1]!.laid.at;
    const through = contextOf({ rule: 'hole-over-end', margin: -8.4, at }, lay);
    const run = { ...through.run, run: { ...through.run.run, supports: holes.map(({ support }) => support) } };
    // 20 mm and 8.4 missing: 29.
    expect(widerHole({ ...through, run }).map(({ edit }) => edit)).toEqual([
      { kind: 'change-support', support: { ...holes[1]!.support, holeMm: 29 } },
    ]);
  });

  it('of a bundle: the hose led by itself, apart from the one that the finding names', () => {
    const tied = contextOf({ check: 'bundlePressure', rule: 'bundle-pressure', with: { kind: 'run', id: 'other' } });
    expect(ownWay(tied).map(({ edit }) => edit)).toEqual([{ kind: 'own-way', apartFrom: 'other' }]);
    expect(ownWay(contextOf({ check: 'bundlePressure' }))).toEqual([]);
  });

  it('no sleeve where a hose is nearer to heat than any sleeve lets it come', () => {
    expect(sleeveWhereAsked(contextOf({ check: 'heatDistance', rule: 'clearance-hot' }))).toEqual([]);
    expect(sleeveWhereAsked(contextOf({ check: 'heatDistance', rule: 'heat-sleeve-within' }))).toHaveLength(1);
  });

  it('of slack: at least what is missing, in mm or as a ratio, and never less than the run has', () => {
    const lay = straightLay({ slack: 0.05, tautLengthMm: 400 });
    const slacks = (finding: Partial<Finding>) =>
      moreSlack(contextOf(finding, lay)).map(({ edit }) => (edit.kind === 'slack' ? edit.slack : 0));
    // 8 mm of 400 mm are 2 % more.
    expect(slacks({ margin: -8 })[0]).toBeCloseTo(0.075, 6);
    expect(slacks({ unit: 'ratio', margin: -0.03 })[0]).toBeCloseTo(0.085, 6);
    expect(slacks({ margin: 1 })).toEqual([]);
  });

  it('of places: away from what is too near, by what is missing and a little', () => {
    const lay = straightLay();
    const mid = lay.cutLengthMm / 2;
    const near = clearanceTo({ kind: 'skin', id: 'pipe' }, 12, 20);
    const at = { arcLengthMm: mid, point: [mid, 0, 0] as [number, number, number] };
    const too = { ...lay, clearances: [{ ...near, at, onThing: [mid, 0, -20] as [number, number, number] }] };
    const [waypoint] = standOff(contextOf({ with: { kind: 'skin', id: 'pipe' }, at, margin: -8 }, too));
    expect(waypoint?.edit).toMatchObject({
      kind: 'hold',
      put: [
        {
          before: 0,
          support: { kind: 'waypoint', point: [expect.closeTo(mid), expect.closeTo(0), expect.closeTo(12)] },
        },
      ],
    });
  });

  it('of clamps: as many as the rule asks for, evenly', () => {
    const lay = straightLay();
    const long = contextOf({ check: 'clampSpacing', limit: lay.cutLengthMm / 2.5 }, lay);
    const [proposal] = clampsBetween(long);
    const put = proposal?.edit.kind === 'hold' ? proposal.edit.put : [];
    expect(put).toHaveLength(2);
    expect(put.every(({ support }) => support.axis !== undefined)).toBe(true);
  });

  it('of sizes: ends of the same angles, an adapter where the port needs one, clamps that fit; nothing where a part is missing', () => {
    const large = exampleHose({ id: 'hose-12', dash: 12, outsideDiameterMm: 22 });
    const ends = [exampleEnd(0, { id: 'end-12-0', dash: 12 }), exampleEnd(45, { id: 'end-12-45', dash: 12 })];
    const flare = { portSeat: 'flare-37', portDash: 8, dash: 12 };
    const adapters = [
      exampleAdapter({ id: 'elbow', ...flare, bendAngleDeg: 90 }),
      exampleAdapter({ id: 'out', ...flare }),
    ];
    const clamps = [sampleClamp({ id: 'p-16' }), sampleClamp({ id: 'p-22', holdsFromMm: 20, holdsToMm: 23 })];
    const tables = { ...TABLES, hoses: [...TABLES.hoses, large], ends: [...TABLES.ends, ...ends], adapters, clamps };
    const context = contextOf({ check: 'flowSpeed', rule: 'flow-speed-suction' });
    const supports = [
      { id: 'c', kind: 'clamp' as const, point: [250, 0, 0] as [number, number, number], part: 'p-16' },
    ];
    const held = { ...context, tables, run: { ...context.run, run: { ...context.run.run, supports } } };
    const outwards = [{ adapter: 'out', outlet: 'straight' }];
    expect(largerSizes(held).map(({ edit }) => edit)).toEqual([
      {
        kind: 'size',
        hose: 'hose-12',
        a: { end: 'end-12-45', adapters: outwards },
        b: { end: 'end-12-0', adapters: outwards },
        clamps: [{ support: 'c', part: 'p-22' }],
      },
    ]);
    expect(largerSizes(held)[0]?.words).toBe('A -12 hose, Example hose, with its ends and adapters on its ports');
    expect(largerSizes(held)[0]?.toGet).toEqual(['hose-12', 'end-12-45', 'end-12-0', 'out', 'out']);
    expect(smallerSizes(held)).toEqual([]);
    expect(largerSizes({ ...held, tables: { ...tables, adapters: [] } })).toEqual([]);
    expect(largerSizes({ ...held, tables: { ...tables, ends: ends.slice(0, 1) } })).toEqual([]);
    expect(largerWhereAsked(held)).toEqual([]);
    expect(largerWhereAsked({ ...held, finding: { ...held.finding, rule: 'drain-least-dash' } })).toHaveLength(1);
    const cut = { ...held, run: { ...held.run, run: { ...held.run.run, cutLengthMm: 500 } } };
    expect(largerSizes(cut)).toEqual([]);
  });

  it('of sizes on an adapter: the last one is changed for one that offers the other size', () => {
    const large = exampleHose({ id: 'hose-12', dash: 12 });
    const ends = [0, 45].map((angle) => exampleEnd(angle, { id: `end-12-${angle}`, dash: 12 }));
    const boss = exampleAdapter({ id: 'boss-8' });
    const adapters = [
      boss,
      exampleAdapter({ id: 'boss-12', dash: 12 }),
      exampleAdapter({ id: 'out', portSeat: 'flare-37', dash: 12 }),
    ];
    const context = contextOf({ check: 'flowSpeed' });
    const use = { adapter: 'boss-8', outlet: 'straight' as const, clockDeg: 20 };
    const { port } = context.run.a;
    const stack = { bare: { ...port, seat: 'o-ring-boss' }, adapters: [{ adapter: boss, use }], fitted: [] };
    const tables = { ...TABLES, hoses: [...TABLES.hoses, large], ends: [...TABLES.ends, ...ends], adapters };
    const [proposal] = largerSizes({ ...context, tables, run: { ...context.run, a: { ...context.run.a, stack } } });
    expect(proposal?.edit).toMatchObject({
      a: { adapters: [{ adapter: 'boss-12', clockDeg: 20 }] },
      b: { adapters: [{ adapter: 'out' }] },
    });
  });

  it('of clamps that bear more heat and hold this hose, and none for a clamp of no table', () => {
    const clamps = [
      sampleClamp({ id: 'soft', maxTemperatureC: 90 }),
      sampleClamp({ id: 'tough', maxTemperatureC: 250 }),
      sampleClamp({ id: 'small', holdsFromMm: 8, holdsToMm: 10, maxTemperatureC: 300 }),
    ];
    const lay = straightLay();
    const at = { arcLengthMm: 250, point: [250, 0, 0] as [number, number, number] };
    const clamp = { id: 'c', kind: 'clamp' as const, axis: [1, 0, 0] as [number, number, number] };
    const laid = { ...lay, supports: [{ ...clamp, proposed: false, at }] };
    const context = contextOf({ check: 'clampHeat', unit: 'deg C', at }, laid);
    const of = (part?: string) => {
      const supports = [{ ...clamp, point: at.point, ...(part === undefined ? {} : { part }) }];
      const run = { ...context.run, run: { ...context.run.run, supports } };
      return hotterClamp({ ...context, run, tables: { ...TABLES, clamps } }).map(({ edit }) => edit);
    };
    expect(of('soft')).toEqual([
      { kind: 'change-support', support: expect.objectContaining({ id: 'c', part: 'tough' }) },
    ]);
    expect(of('tough')).toEqual([]);
    expect(of()).toEqual([]);
  });

  it('of a clamp that stands too near: moved away from the thing by what is missing, and by twice that', () => {
    const clamp = { id: 'c', kind: 'clamp' as const, axis: [1, 0, 0] as [number, number, number] };
    const at = { arcLengthMm: 250, point: [250, 0, 0] as [number, number, number] };
    const near = clearanceTo({ kind: 'skin', id: 'pipe' }, 12, 20, { at, onThing: [250, 0, -20] });
    const lay = { ...straightLay({ clearances: [near] }), supports: [{ ...clamp, proposed: false, at }] };
    const context = contextOf({ check: 'rock', with: { kind: 'skin', id: 'pipe' }, at, margin: -8 }, lay);
    const held = { ...context.run, run: { ...context.run.run, supports: [{ ...clamp, point: at.point }] } };
    const points = moveClamp({ ...context, run: held }).map(({ edit }) =>
      edit.kind === 'change-support' ? edit.support.point : undefined,
    );
    expect(points).toEqual([
      [250, 0, 12],
      [250, 0, 24],
    ]);
    expect(moveClamp(context)).toEqual([]);
    // What is carried along by the engine no waypoint holds.
    expect(standOff(context).map(({ edit }) => edit.kind === 'hold' && edit.put[0]?.support.kind)).toEqual([
      'clamp',
      'clamp',
    ]);
  });

  it('of an even fall: on the straight line between the mouths, and nothing inside an end', () => {
    const lay = straightLay();
    const at = (mm: number) => ({ arcLengthMm: mm, point: [mm, 0, -40] as [number, number, number] });
    const points = (mm: number) =>
      evenFall(contextOf({ check: 'drainFall', unit: 'deg', at: at(mm) }, lay)).map(({ edit }) =>
        edit.kind === 'hold' ? edit.put[0]?.support.point : undefined,
      );
    expect(points(200)).toEqual([
      [200, 0, 0],
      [200, 0, 0],
    ]);
    expect(points(0)).toEqual([]);
  });
});
