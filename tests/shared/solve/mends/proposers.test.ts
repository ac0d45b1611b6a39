import { describe, expect, it } from 'vitest';
import type { Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { PartTables } from '../../../../shared/document/parts/schema.ts';
import { CHECK_NAMES, type CheckName } from '../../../../shared/document/wording/findingWords.ts';
import { otherAngles, otherMaterials } from '../../../../shared/solve/mends/endProposals.ts';
import { clampsBetween, standOff } from '../../../../shared/solve/mends/holdProposals.ts';
import { moreSlack } from '../../../../shared/solve/mends/lengthProposals.ts';
import { sleeves, sleeveWhereAsked, tighterHoses } from '../../../../shared/solve/mends/partProposals.ts';
import type { MendContext } from '../../../../shared/solve/mends/proposal.ts';
import { PROPOSERS } from '../../../../shared/solve/mends/proposers.ts';
import { clearanceTo, straightLay } from '../../../arbitraries/lays.ts';
import { sampleSleeve } from '../../../arbitraries/projects.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

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
      { kind: 'end', side: 'a', end: 'end-0' },
      { kind: 'end', side: 'a', end: 'end-90' },
      { kind: 'end', side: 'b', end: 'end-30' },
      { kind: 'end', side: 'b', end: 'end-45' },
      { kind: 'end', side: 'b', end: 'end-90' },
    ]);
    expect(otherMaterials(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'end', side: 'a', end: 'alu-45' }]);
  });

  it('of hoses and sleeves: of the size of the run, that bend tighter, that go over it', () => {
    expect(tighterHoses(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'hose', hose: 'tighter' }]);
    expect(sleeves(contextOf({})).map(({ edit }) => edit)).toEqual([{ kind: 'sleeve', sleeve: 'sleeve-16' }]);
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
});
