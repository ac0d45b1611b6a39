import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { Adapter, End } from '../../../../shared/document/parts/schema.ts';
import type { StackedAdapter } from '../../../../shared/document/project/fitAdapters.ts';
import { type ResolvedProject, seatedPort, squarePort } from '../../../../shared/document/project/resolve.ts';
import { PLAIN_SKIN, type Port } from '../../../../shared/document/project/schema.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { measureEndRoom } from '../../../../shared/solve/layRun/measureEndRoom.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { standingAdapters, tubesOfLay } from '../../../../shared/solve/layRun/tubesOfLay.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();
const HOSE = exampleHose({ minBendRadiusMm: 60 });
const ELBOW = { form: 'elbow', bendAngleDeg: 90, portToBendMm: 22, bendToSeatMm: 26 } as const;

function use(adapter: Partial<Adapter>, clockDeg = 0, outlet: 'straight' | 'branch' = 'straight'): StackedAdapter {
  const row = exampleAdapter(adapter);
  return { adapter: row, use: { adapter: row.id, outlet, clockDeg } };
}

interface Rig {
  readonly a?: Partial<Port>;
  readonly b?: Partial<Port>;
  readonly stack?: readonly StackedAdapter[];
  readonly ends?: readonly [End, End];
}

const STRAIGHT = exampleEnd(0, { seatToBendMm: 18, bendToShoulderMm: 12, shoulderToMouthMm: 20 });

function rig({ a = {}, b = {}, stack = [], ends = [STRAIGHT, STRAIGHT] }: Rig): ResolvedProject {
  const portA = examplePort('a', { axis: [0, 0, 1], up: [1, 0, 0], ...a });
  const portB = examplePort('b', { seatPoint: [420, 160, 40], axis: [-1, 0, 0], up: [0, 0, 1], ...b });
  const { project, runs } = oneRunProject([portA, portB], [ends[0], ends[1]], HOSE);
  return {
    project,
    runs: runs.map((run) => ({ ...run, a: { ...run.a, ...seatedPort(squarePort(portA), stack) } })),
  };
}

function lay(setup: Rig, bay: BayIndex = BAY): Lay {
  const { project, runs } = rig(setup);
  return layRun({ project, bay }, runs[0]!, buildTubeField([]), UNWATCHED);
}

function expectSameHose(l: Lay, other: Lay, move: (p: Vec3) => Vec3 = (p) => p, withinMm = 1e-6): void {
  expect(l.outcome).toBe('laid');
  expect(Math.abs(l.cutLengthMm - other.cutLengthMm)).toBeLessThan(withinMm);
  expect(l.centreline.points.length).toBe(other.centreline.points.length);
  for (const [i, p] of l.centreline.points.entries())
    expect(distance(move(p), other.centreline.points[i]!)).toBeLessThan(withinMm);
}

describe('a run whose port has adapters', () => {
  it('lies as it does on a bare port that stands where the last of them ends', () => {
    const stack = [use(ELBOW, 40), use({ portToBendMm: 15, bendToSeatMm: 10 })];
    const onto = lay({ stack });
    const { seatPoint, axis, up } = rig({ stack }).runs[0]!.a.port;
    expectSameHose(onto, lay({ a: { seatPoint, axis, up } }));
    expect(onto.ends.a.adapters?.map((x) => x.id)).toEqual(['example', 'example']);
    expect(onto.ends.a.adapters?.[0]?.clockDeg).toBe(40);
    expect(onto.ends.a.adapters?.[0]?.points[0]).toEqual([0, 0, 0]);
    expect(onto.ends.a.adapters?.[1]?.points.at(-1)).toEqual(onto.ends.a.seatPoint);
    expect(onto.ends.b).not.toHaveProperty('adapters');
  });

  it('turns whole when its port is turned: an elbow at clock 0 on a port turned by 40 is one at clock 40', () => {
    const rad = (40 * Math.PI) / 180;
    const turned = lay({ stack: [use(ELBOW)], a: { up: [Math.cos(rad), Math.sin(rad), 0] } });
    expectSameHose(turned, lay({ stack: [use(ELBOW, 40)] }), (p) => p, 1e-3);
  });

  it('turns with the whole bay about the plumb line', () => {
    const quarter = (p: Vec3): [number, number, number] => [-p[1], p[0], p[2]];
    const stack = [use(ELBOW, 25)];
    const plain = lay({ stack });
    const turned = lay({
      stack,
      a: { up: quarter([1, 0, 0]) },
      b: { seatPoint: quarter([420, 160, 40]), axis: quarter([-1, 0, 0]) },
    });
    expect(turned.outcome).toBe('laid');
    expect(Math.abs(turned.cutLengthMm - plain.cutLengthMm)).toBeLessThan(2);
    expect(distance(quarter(plain.ends.a.seatPoint), turned.ends.a.seatPoint)).toBeLessThan(1e-9);
  });
});

describe('adapters as obstacles', () => {
  const tee = { form: 'tee', branchToSeatMm: 30 } as const;

  it('stand in the way of other runs, laid or not', () => {
    const { runs } = rig({ stack: [use(tee)] });
    const l = lay({ stack: [use(tee)] });
    const tubes = tubesOfLay(l, runs[0]!);
    // hose, two ends, and a tee's run and branch
    expect(tubes).toHaveLength(5);
    expect(tubes.map((t) => t.radiusMm)).toContain(12);
    expect(standingAdapters(runs[0]!).map((t) => t.points)).toEqual(
      tubes.filter((t) => t.radiusMm === 12).map((t) => t.points),
    );
  });

  it('are none to the run on the other outlet of the same tee', () => {
    const l = lay({ stack: [use(tee)] });
    const { runs } = rig({ stack: [use(tee)] });
    const branch = rig({ stack: [use(tee, 0, 'branch')] }).runs[0]!;
    const elsewhere = rig({ a: { seatPoint: [0, 90, 0] } }).runs[0]!;
    expect(tubesOfLay(l, runs[0]!, branch)).toHaveLength(3);
    expect(tubesOfLay(l, runs[0]!, elsewhere)).toHaveLength(5);
    expect(standingAdapters(runs[0]!, branch)).toEqual([]);
  });
});

describe('room for adapters', () => {
  /** A wall at x = 30, so that an elbow towards it at 22 mm out with a radius of 12 mm and a reach of 26 mm stands in it. */
  const wall = buildBayIndex(
    {
      positions: Float32Array.from([30, -900, -900, 30, 900, -900, 30, 900, 900, 30, -900, 900]),
      indices: Uint32Array.from([0, 1, 2, 0, 2, 3]),
      parts: [{ name: 'wall', firstTriangle: 0, triangleCount: 2 }],
    },
    () => PLAIN_SKIN,
    UNWATCHED,
  );
  const roomAt = (clockDeg: number) => {
    const { project, runs } = rig({ stack: [use({ ...ELBOW, id: 'elbow' }, clockDeg)] });
    const setting = runSetting(project, runs[0]!);
    // The end alone is out of the way: a collar of almost nothing.
    return measureEndRoom({ ...setting.a, end: { ...STRAIGHT, collarDiameterMm: 0.001 } }, 0, wall);
  };

  it('is measured round their bodies and names the one that has least', () => {
    // Away from the wall its nearest body is at x = 0: 30 - 12 mm, the rule of held places aside at 22 mm from the seat (11 mm).
    const away = roomAt(180);
    expect(away?.adapter).toBe('elbow');
    expect(away?.roomMm).toBeCloseTo(30 - Math.min(12, 0.5 * 22), 1);
    // Towards it the outlet at x = 26 has 4 mm to the wall where 12 mm are asked; the end goes on through it.
    const towards = roomAt(0);
    expect(towards?.roomMm).toBeLessThan(-7.9);
    expect(towards?.part).toBe('wall');
  });
});

describe('kinds of ends', () => {
  it('lays a hose from an end bent by half a turn, its mouth beside the port', () => {
    const half = exampleEnd(180, { seatToBendMm: 25, bendToShoulderMm: 10, dropMm: 44, shoulderToMouthMm: 18 });
    const l = lay({ a: { axis: [0, 0, 1] }, b: { seatPoint: [420, 160, -200] }, ends: [half, STRAIGHT] });
    expect(l.outcome).toBe('laid');
    expect(l.ends.a.hoseAxis[2]).toBeCloseTo(-1, 12);
    expect(Math.hypot(l.ends.a.shoulderPoint[0], l.ends.a.shoulderPoint[1])).toBeCloseTo(44, 9);
    expect(l.ends.a.body?.length).toBeGreaterThan(20);
    // C = bend_to_shoulder - seat_to_bend, by document/parts/cutOff.ts: the shoulder lies 15 mm before the seat's plane.
    expect(l.cutOffMm.a).toBeCloseTo(-15, 12);
    expect(l.overallLengthMm).toBeCloseTo(l.cutLengthMm - 15 + 30, 9);
  });

  const elbowEnd = (turning: Partial<End>): Lay =>
    lay({ ends: [exampleEnd(90, { shoulderToMouthMm: 15, ...turning }), STRAIGHT] });

  it('turns an end with a range only within it, to its limit where the hose would rather go further', () => {
    const free = elbowEnd({}).ends.a.ownClockDeg;
    const range = (from: number, to: number) =>
      elbowEnd({ turning: 'range', turnFromDeg: free + from, turnToDeg: free + to }).ends.a;
    const round = range(-25, 25);
    expect(Math.abs(round.ownClockDeg - free)).toBeLessThan(25);
    expect(round.ownClockChosen).toBe(true);
    const beyond = range(40, 100);
    expect(beyond.ownClockDeg).toBeGreaterThan(free + 40 - 1e-6);
    expect(beyond.ownClockDeg).toBeLessThan(free + 60);
    expect(range(-130, -90).ownClockDeg).toBeCloseTo((free - 90 + 360) % 360, 0);
  });

  it('stands a fixed end at 0 where its clock is not stated', () => {
    const { ownClockDeg, ownClockChosen } = elbowEnd({ turning: 'fixed' }).ends.a;
    expect(ownClockDeg).toBe(0);
    expect(ownClockChosen).toBe(false);
  });
});
