import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { anySquareTo, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { TrialEntry } from '../../../../shared/document/endTrial/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { byRank, endTrial, type TrialBy } from '../../../../shared/solve/endTrial/endTrial.ts';
import { shelfFor } from '../../../../shared/solve/endTrial/shelf.ts';
import { layIfClean } from '../../../../shared/solve/layRun/layIfClean.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();
const shelf = [0, 45, 90].map((angle) =>
  exampleEnd(angle, { seatToBendMm: angle === 0 ? 0 : 30, shoulderToMouthMm: 15 }),
);
const HOSE = exampleHose({ insideDiameterMm: 9, outsideDiameterMm: 14, minBendRadiusMm: 60 });

/**
 * Two ports on one wall, 400 mm apart, both facing out of it, the run with straight ends. Nearer, two square ends leave a hose so short
 * that it has no room for the slack that pressure takes.
 */
function sideBySide() {
  const a = examplePort('a', { axis: [0, 0, 1], up: [1, 0, 0] });
  const b = examplePort('b', { seatPoint: [400, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] });
  return oneRunProject([a, b], [shelf[0]!, shelf[0]!], HOSE, {});
}

const resolved = sideBySide();
const context = { project: resolved.project, bay: BAY };
const trial = await endTrial(context, resolved, resolved.runs[0]!, shelf, [], UNWATCHED);

describe('endTrial', () => {
  it('lays every pair that lies clean, each with its own ends, free to turn', () => {
    expect(trial.tried).toBe(9);
    expect(trial.entries.length).toBeGreaterThan(5);
    for (const { ends, lay, bendsDeg } of trial.entries) {
      expect(lay.outcome).toBe('laid');
      expect(ends.a).toBe(`end-${bendsDeg.a}`);
      expect(lay.ends.a.ownClockChosen).toBe(bendsDeg.a > 0);
    }
  });

  it('finds the shortest hose with two square ends turned to each other: the ports face the same way', () => {
    const shortest = trial.entries.reduce((p, q) => (q.lay.cutLengthMm < p.lay.cutLengthMm ? q : p));
    expect(shortest.bendsDeg).toEqual({ a: 90, b: 90 });
    // Face to face 400 - 2 x 47 mm apart at the shoulders: slack is all that the hose has to bend.
    expect(shortest.lay.tautLengthMm).toBeCloseTo(400 - 2 * 47 - 2 * 15, 0);
    const straight = trial.entries.find((e) => e.bendsDeg.a === 0 && e.bendsDeg.b === 0)!;
    expect(straight.lay.cutLengthMm).toBeGreaterThan(1.5 * shortest.lay.cutLengthMm);
  });

  it('tells what each pair costs, where every price is stated', async () => {
    expect(trial.entries.every((e) => e.cost === undefined)).toBe(true);
    const priced = shelf.map((end, i) => ({ ...end, price: [10, 16, 21][i]! }));
    const run = resolved.runs[0]!;
    const own = { ...run, hose: { ...run.hose, pricePerM: 30 }, a: { ...run.a, end: priced[0]! } };
    const { entries } = await endTrial(context, resolved, own, priced, [], UNWATCHED);
    const square = entries.find((e) => e.bendsDeg.a === 90 && e.bendsDeg.b === 90)!;
    expect(square.cost).toBeCloseTo(42 + (30 * square.lay.cutLengthMm) / 1000, 9);
  });

  it('measures each pair in the project that has it, and judges what was measured', async () => {
    const seen: string[] = [];
    const measure: TrialBy['measure'] = (within, lay) => {
      seen.push(`${within.runs[0]!.a.end.id} ${within.runs[0]!.b.end.id}`);
      return { ...lay, slack: 0.001 };
    };
    const measured = await endTrial(context, resolved, resolved.runs[0]!, shelf, [], UNWATCHED, { measure });
    expect(seen.toSorted()).toEqual(measured.entries.map(({ ends }) => `${ends.a} ${ends.b}`).toSorted());
    expect(new Set(seen).size).toBe(seen.length);
    for (const { findings } of measured.entries) expect(findings.map((f) => f.check)).toContain('slack');
  });

  it('says the same twice', async () => {
    const again = await endTrial(context, resolved, resolved.runs[0]!, shelf, [], UNWATCHED);
    const plain = (entries: readonly TrialEntry[]) =>
      JSON.stringify(entries.map((e) => ({ ...e, lay: { ...e.lay, timingsMs: {} } })));
    expect(plain(again.entries)).toBe(plain(trial.entries));
  });
});

describe('shelfFor', () => {
  it('takes one end of each angle: the chosen one, else its material, else what there is; only what fits', () => {
    const chosen = exampleEnd(45, { id: 'mine', material: 'steel' });
    const table = [
      exampleEnd(45, { id: 'other-45', material: 'steel' }),
      chosen,
      exampleEnd(90, { id: 'brass-90', material: 'brass' }),
      exampleEnd(90, { id: 'steel-90', material: 'steel' }),
      exampleEnd(30, { id: 'small-30', dash: 6 }),
      exampleEnd(60, { id: 'odd-60', seat: 'other-seat' }),
      exampleEnd(120, { id: 'brass-120', material: 'brass' }),
    ];
    const found = shelfFor({ port: examplePort('a', {}), end: chosen }, table);
    expect(found.map((e) => e.id)).toEqual(['mine', 'steel-90', 'brass-120']);
  });

  it('offers an end bent by half a turn as well, and a hose with one is tried', async () => {
    const half = exampleEnd(180, { seatToBendMm: 20, bendToShoulderMm: 15, dropMm: 44, shoulderToMouthMm: 15 });
    const table = [shelf[0]!, half];
    expect(shelfFor({ port: examplePort('a', {}), end: half }, table).map((e) => e.bendAngleDeg)).toEqual([0, 180]);
    const ended = { ...resolved.runs[0]!, a: { ...resolved.runs[0]!.a, end: half } };
    const tried = await endTrial(context, resolved, ended, table, [], UNWATCHED);
    expect(tried.tried).toBe(4);
    expect(tried.entries.some((e) => e.bendsDeg.a === 180 || e.bendsDeg.b === 180)).toBe(true);
  });
});

describe('byRank', () => {
  const entry = (id: string, more: Partial<TrialEntry>): TrialEntry => ({
    ends: { a: id, b: id },
    bendsDeg: { a: 90, b: 90 },
    lay: straightLay(),
    findings: [],
    ...more,
  });

  it('puts fewer clamps before less bend, less bend before a shorter cut, and breaks ties by name', () => {
    const clamp = {
      id: 'c',
      kind: 'clamp' as const,
      proposed: true,
      at: { arcLengthMm: 9, point: [9, 0, 0] as [number, number, number] },
      axis: [1, 0, 0] as [number, number, number],
    };
    const clamped = entry('clamped', { bendsDeg: { a: 0, b: 0 }, lay: straightLay({ supports: [clamp] }) });
    const bent = entry('bent', { lay: straightLay({ cutLengthMm: 300 }) });
    const gentle = entry('gentle', { bendsDeg: { a: 45, b: 0 } });
    const twin = entry('a-twin', { bendsDeg: { a: 45, b: 0 } });
    expect([clamped, bent, gentle, twin].sort(byRank).map((e) => e.ends.a)).toEqual([
      'a-twin',
      'gentle',
      'bent',
      'clamped',
    ]);
  });

  it('puts the cooler hose before the roomier one, and the cheaper before the shorter; a few degrees are no difference', () => {
    const near = (clearanceMm: number) =>
      straightLay({
        clearances: [
          {
            to: { kind: 'skin' as const, id: 'frame' },
            clearanceMm,
            requiredMm: 12,
            at: { arcLengthMm: 9, point: [9, 0, 0] as [number, number, number] },
          },
        ] as unknown as TrialEntry['lay']['clearances'],
      });
    const cool = entry('cool', { heatRoomC: 60, lay: near(14), cost: 90 });
    const warm = entry('warm', { heatRoomC: 31, lay: near(40), cost: 50 });
    const alike = entry('alike', { heatRoomC: 29, lay: near(60), cost: 80 });
    expect([warm, alike, cool].sort(byRank).map((e) => e.ends.a)).toEqual(['cool', 'alike', 'warm']);
    const cheap = entry('cheap', { cost: 40, lay: straightLay({ cutLengthMm: 500 }) });
    const dear = entry('dear', { cost: 45, lay: straightLay({ cutLengthMm: 300 }) });
    const unknown = entry('a-unknown', { lay: straightLay({ cutLengthMm: 200 }) });
    expect([unknown, dear, cheap].sort(byRank).map((e) => e.ends.a)).toEqual(['cheap', 'dear', 'a-unknown']);
  });
});

it('never fails on ends thrown anywhere, near or far, and what is clean is one unbroken hose', () => {
  const random = seededRandom(9);
  const direction = (): [number, number, number] => {
    const [x, y, z]: Vec3 = unit([random() - 0.5, random() - 0.5, random() - 0.5]);
    return [x, y, z];
  };
  let clean = 0;
  for (let i = 0; i < 40; i++) {
    const reach = i % 2 === 0 ? 150 : 600;
    const at = (): [number, number, number] => [
      reach * (random() - 0.5),
      reach * (random() - 0.5),
      reach * (random() - 0.5),
    ];
    const port = (id: string) => {
      const axis = direction();
      return examplePort(id, {
        seatPoint: at(),
        axis,
        up: [...anySquareTo(axis)] as [number, number, number],
      });
    };
    const pick = () => shelf[Math.floor(random() * shelf.length)]!;
    const one = oneRunProject([port('a'), port('b')], [pick(), pick()], HOSE, {});
    const lay = layIfClean({ project: one.project, bay: BAY }, one.runs[0]!, buildTubeField([]), UNWATCHED);
    if (lay === undefined) continue;
    clean++;
    const { points } = lay.centreline;
    for (let k = 1; k < points.length; k++)
      expect(Math.hypot(...points[k]!.map((v, axis) => v - points[k - 1]![axis]!))).toBeLessThan(4.01);
  }
  expect(clean).toBeGreaterThan(15);
});
