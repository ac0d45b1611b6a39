import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay, Taper } from '../../../../shared/document/lay/schema.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import type { StackedAdapter } from '../../../../shared/document/project/fitAdapters.ts';
import { type ResolvedProject, seatedPort, squarePort } from '../../../../shared/document/project/resolve.ts';
import { PLAIN_SKIN, type Port, type Run } from '../../../../shared/document/project/schema.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { taperClocks, taperRanges } from '../../../../shared/solve/taper/taperClocks.ts';
import { taperLays } from '../../../../shared/solve/taper/taperLays.ts';
import { taperWell } from '../../../../shared/solve/taper/taperWell.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 18, bendToShoulderMm: 12, shoulderToMouthMm: 20 });
const ELBOW = exampleAdapter({
  id: 'npt-elbow',
  form: 'elbow',
  bendAngleDeg: 90,
  portToBendMm: 22,
  bendToSeatMm: 26,
  turning: 'taper',
});

function elbowAt(clock: number | [number, number]): StackedAdapter {
  const stated = typeof clock === 'number' ? { clockDeg: clock } : { clockRangeDeg: clock };
  return { adapter: ELBOW, use: { adapter: ELBOW.id, outlet: 'straight', ...stated } };
}

interface Rig {
  readonly clock: number | [number, number];
  readonly b: Partial<Port>;
  readonly ends?: readonly [End, End];
  readonly run?: Partial<Run>;
  readonly bay?: BayIndex;
}

const EMPTY = emptyBay();

function rig({ clock, b, ends = [STRAIGHT, STRAIGHT], run = {} }: Rig): ResolvedProject {
  const portA = examplePort('a', { axis: [0, 0, 1], up: [1, 0, 0] });
  const { project, runs } = oneRunProject([portA, examplePort('b', b)], [ends[0], ends[1]], HOSE, run);
  return {
    project,
    runs: runs.map((r) => ({ ...r, a: { ...r.a, ...seatedPort(squarePort(portA), [elbowAt(clock)]) } })),
  };
}

function laid(setup: Rig): Lay {
  const { project, runs } = rig(setup);
  return layRun({ project, bay: setup.bay ?? EMPTY }, runs[0]!, buildTubeField([]), UNWATCHED);
}

function turned(setup: Rig): { lay: Lay; taper: Taper } {
  const lay = laid(setup);
  const [out] = taperLays({ resolved: rig(setup), bay: setup.bay ?? EMPTY }, [lay], UNWATCHED);
  if (out?.taper === undefined) throw new Error('expected the taper to be told');
  return { lay, taper: out.taper };
}

const OVERHEAD = {
  seatPoint: [0, 0, 520] as [number, number, number],
  axis: [0, 0, -1] as [number, number, number],
  up: [1, 0, 0] as [number, number, number],
};
const ASIDE = {
  seatPoint: [430, 0, 60] as [number, number, number],
  axis: [0, 0, 1] as [number, number, number],
  up: [1, 0, 0] as [number, number, number],
};

describe('the clocks of taper threads', () => {
  const ranges = (range: [number, number]) => taperRanges(rig({ clock: range, b: OVERHEAD }).runs[0]!);

  it('are both limits and what lies between, at most 15 degrees apart', () => {
    expect(taperClocks(ranges([0, 90])).flat()).toEqual([0, 15, 30, 45, 60, 75, 90]);
    expect(taperClocks(ranges([10, 30])).flat()).toEqual([10, 20, 30]);
    expect(ranges([40, 40])).toEqual([]);
    expect(ranges([0, 90])[0]).toMatchObject({ end: 'a', adapter: 'npt-elbow', laidAtDeg: 45 });
  });

  it('of several are all combinations, fewer where those are too many', () => {
    const [one] = ranges([0, 90]);
    expect(taperClocks([one!, one!])).toHaveLength(49);
    expect(taperClocks([one!, { ...one!, toDeg: 180 }])).toHaveLength(9);
    expect(taperClocks([one!, one!, one!, one!])).toHaveLength(4 * 7);
  });
});

describe('taperLays', () => {
  // With END B on the line the taper turns about, and that line plumb, every clock is the same hose turned about it.
  it('finds the same hose at every clock where END B stands over the port', () => {
    const { lay, taper } = turned({ clock: [-60, 60], b: OVERHEAD });
    expect(lay.outcome).toBe('laid');
    expect(taper.poses.map((p) => p.clocks[0]?.clockDeg)).toEqual([-60, -45, -30, -15, 0, 15, 30, 45, 60]);
    for (const pose of taper.poses) {
      expect(pose.outcome).toBe('lies');
      expect(pose.slackLeftMm).toBeCloseTo(lay.liveLengthMm - lay.tautLengthMm, 3);
      expect(pose.minRadius?.provenAtLeastMm).toBeGreaterThan(0.995 * lay.minRadius.radiusMm);
      expect(pose.minRadius?.provenAtLeastMm).toBeLessThan(1.005 * lay.minRadius.radiusMm);
      expect(pose).not.toHaveProperty('twistDeg');
    }
  });

  // The twin: the hose already cut, its elbow stated at that clock, laid anew from nothing.
  it('lies at each clock as the same hose laid there anew', () => {
    const { lay, taper } = turned({ clock: [-40, 40], b: ASIDE });
    for (const pose of taper.poses) {
      const clock = pose.clocks[0]?.clockDeg ?? 0;
      const anew = laid({ clock, b: ASIDE, run: { cutLengthMm: lay.cutLengthMm } });
      if (pose.outcome !== 'lies') {
        // Too short for its place: laid anew it breaks something too, and has no slack.
        expect(anew.outcome).not.toBe('laid');
        expect(anew.liveLengthMm - anew.tautLengthMm).toBeLessThan(0.01);
        continue;
      }
      expect(Math.abs(anew.minRadius.radiusMm / (pose.minRadius?.provenAtLeastMm ?? 0) - 1)).toBeLessThan(0.001);
      expect(pose.slackLeftMm).toBeCloseTo(anew.liveLengthMm - anew.tautLengthMm, 4);
    }
  });

  it('turns with its range: clocks 30 on are those of a port turned by 30', () => {
    const rad = Math.PI / 6;
    const plain = turned({ clock: [-20, 20], b: ASIDE }).taper;
    const on = (() => {
      const setup: Rig = { clock: [10, 50], b: ASIDE };
      const base = rig(setup);
      const port = squarePort(examplePort('a', { axis: [0, 0, 1], up: [Math.cos(-rad), Math.sin(-rad), 0] }));
      const resolved = {
        ...base,
        runs: base.runs.map((r) => ({ ...r, a: { ...r.a, ...seatedPort(port, [elbowAt([10, 50])]) } })),
      };
      const lay = layRun({ project: resolved.project, bay: EMPTY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
      return taperLays({ resolved, bay: EMPTY }, [lay], UNWATCHED)[0]?.taper;
    })();
    expect(on?.poses).toHaveLength(plain.poses.length);
    for (const [i, pose] of plain.poses.entries()) {
      expect(on?.poses[i]?.slackLeftMm).toBeCloseTo(pose.slackLeftMm, 2);
      expect(on?.poses[i]?.minRadius?.provenAtLeastMm).toBeCloseTo(pose.minRadius?.provenAtLeastMm ?? 0, 1);
    }
  });

  it('says the same of a run that is told from its other end', () => {
    const setup: Rig = { clock: [-40, 40], b: ASIDE };
    const { lay, taper } = turned(setup);
    const base = rig(setup);
    const swapped = {
      ...base,
      runs: base.runs.map((r) => ({ ...r, a: r.b, b: r.a, run: { ...r.run, a: r.run.b, b: r.run.a } })),
    };
    const back = layRun({ project: swapped.project, bay: EMPTY }, swapped.runs[0]!, buildTubeField([]), UNWATCHED);
    const told = taperLays({ resolved: swapped, bay: EMPTY }, [back], UNWATCHED)[0]?.taper;
    expect(back.cutLengthMm).toBeCloseTo(lay.cutLengthMm, 1);
    expect(told?.ranges[0]?.end).toBe('b');
    for (const [i, pose] of taper.poses.entries()) {
      expect(told?.poses[i]?.slackLeftMm).toBeCloseTo(pose.slackLeftMm, 1);
      expect(told?.poses[i]?.minRadius?.provenAtLeastMm).toBeCloseTo(pose.minRadius?.provenAtLeastMm ?? 0, 0);
    }
  });

  it('works only the stretch before the first clamp, which has but its own part of the slack to give', () => {
    const free = turned({ clock: [-25, 25], b: ASIDE });
    const place = free.lay.centreline;
    const i = Math.round(place.points.length * 0.55);
    const along = place.points[i + 1]!.map((v, k) => v - place.points[i - 1]![k as 0]) as [number, number, number];
    const clamp = { id: 'c', kind: 'clamp' as const, point: place.points[i]!, axis: along };
    const { lay, taper } = turned({ clock: [-25, 25], b: ASIDE, run: { supports: [clamp] } });
    const middle =
      taper.poses.find((p) => p.clocks[0]?.clockDeg === 0) ?? taper.poses[Math.floor(taper.poses.length / 2)];
    expect(middle?.outcome).toBe('lies');
    // The slack of the whole hose is shared by both stretches; the one that is worked has a part of it.
    const wholeMm = lay.liveLengthMm - lay.tautLengthMm;
    expect(middle?.slackLeftMm).toBeGreaterThan(0.1 * wholeMm);
    expect(middle?.slackLeftMm).toBeLessThan(0.9 * wholeMm);
  });

  it('says at which clock the hose goes tight, and by how much', () => {
    const { taper } = turned({ clock: [-150, 150], b: ASIDE });
    const worst = taper.poses[taper.worst.slackLeft];
    expect(Math.abs(worst?.clocks[0]?.clockDeg ?? 0)).toBe(150);
    expect(worst?.slackLeftMm).toBeLessThan(0);
    expect(worst?.outcome).not.toBe('lies');
    expect(worst?.name).toMatch(/^npt-elbow at END A at -?150 degrees$/);
    const middle = taper.poses.find((p) => p.clocks[0]?.clockDeg === 0);
    expect(middle?.outcome).toBe('lies');
    expect(middle?.slackLeftMm).toBeGreaterThan(0);
  });

  it('measures what the hose and the turned end come near to', () => {
    // A wall beside the middle hose, at y = -70: a range that swings the elbow towards it brings hose and end near.
    const wall = buildBayIndex(
      {
        positions: Float32Array.from([-900, -70, -900, 900, -70, -900, 900, -70, 900, -900, -70, 900]),
        indices: Uint32Array.from([0, 1, 2, 0, 2, 3]),
        parts: [{ name: 'wall', firstTriangle: 0, triangleCount: 2 }],
      },
      () => PLAIN_SKIN,
      UNWATCHED,
    );
    const { lay, taper } = turned({ clock: [-90, 90], b: ASIDE, bay: wall });
    expect(lay.outcome).toBe('laid');
    const over = (i: number) => {
      const t = taper.poses[i]?.tightest;
      return t === undefined ? Number.POSITIVE_INFINITY : t.clearanceMm - t.requiredMm;
    };
    const clocks = taper.poses.map((p) => p.clocks[0]?.clockDeg ?? 0);
    // up = +x, axis = +z: clock -90 points along -y, at the wall.
    expect(clocks[taper.worst.clearance ?? -1]).toBeLessThan(-45);
    expect(over(taper.worst.clearance ?? -1)).toBeLessThan(0);
    expect(over(clocks.indexOf(90))).toBeGreaterThan(0);
    expect(clocks[taper.worst.room ?? -1]).toBeLessThan(-45);
  });

  it('turns a swivel where that helps, and tells how a hose between two fixed angled ends is wrung', () => {
    const angled = (turning: End['turning']) => exampleEnd(45, { id: `e-${turning}`, shoulderToMouthMm: 20, turning });
    const b = { ...ASIDE, axis: [-1, 0, 0] as [number, number, number], up: [0, 0, 1] as [number, number, number] };
    const free = turned({ clock: [-45, 45], b, ends: [angled('swivel'), STRAIGHT] });
    expect(free.taper.poses.every((p) => p.outcome === 'lies')).toBe(true);
    const fixed = turned({ clock: [-45, 45], b, ends: [angled('fixed'), angled('fixed')] });
    const twists = fixed.taper.poses.map((p) => p.twistDeg ?? Number.NaN);
    expect(twists.every(Number.isFinite)).toBe(true);
    const middle = fixed.taper.poses.findIndex((p) => p.clocks[0]?.clockDeg === 0);
    expect(Math.abs(twists[middle] ?? 99)).toBeLessThan(0.5);
    expect(Math.abs(twists[0] ?? 0)).toBeGreaterThan(10);
    for (const p of fixed.taper.poses) expect(p.ownClockDeg).toEqual(fixed.taper.poses[0]?.ownClockDeg);
  });

  it('gives a hose still to be cut the least more length with which it fits at every clock', () => {
    const setup: Rig = { clock: [-30, 30], b: ASIDE };
    const { lay, taper } = turned(setup);
    expect(taper.poses.some((p) => (p.minRadius?.provenAtLeastMm ?? 0) < lay.minRadius.limitMm)).toBe(true);
    const context = { resolved: rig(setup), bay: EMPTY };
    const [longer] = taperWell(context, [lay], ['run'], UNWATCHED);
    expect(longer?.outcome).toBe('laid');
    expect(longer?.cutLengthMm).toBeGreaterThan(lay.cutLengthMm);
    expect(longer?.cutLengthMm).toBeLessThan(lay.cutLengthMm + 0.1 * lay.tautLengthMm);
    for (const pose of longer?.taper?.poses ?? []) {
      expect(pose.outcome).toBe('lies');
      expect(pose.slackLeftMm).toBeGreaterThan(0);
      expect(pose.minRadius?.provenAtLeastMm).toBeGreaterThan(0.999 * lay.minRadius.limitMm);
    }
    // One that is cut already, or that is not asked for, is told and left.
    expect(taperWell(context, [lay], [], UNWATCHED)[0]?.cutLengthMm).toBe(lay.cutLengthMm);
    const cut = { ...setup, run: { cutLengthMm: lay.cutLengthMm } };
    expect(taperWell({ resolved: rig(cut), bay: EMPTY }, [lay], ['run'], UNWATCHED)[0]?.cutLengthMm).toBe(
      lay.cutLengthMm,
    );
  });

  it('leaves a hose that no length helps as it was laid', () => {
    const setup: Rig = { clock: [-150, 150], b: ASIDE };
    const lay = laid(setup);
    const [same] = taperWell({ resolved: rig(setup), bay: EMPTY }, [lay], ['run'], UNWATCHED);
    expect(same?.cutLengthMm).toBe(lay.cutLengthMm);
    expect(same?.taper?.poses.some((p) => p.outcome !== 'lies')).toBe(true);
  });

  it('leaves runs without a taper, and lays without a hose, as they are', () => {
    const setup: Rig = { clock: 30, b: ASIDE };
    const lay = laid(setup);
    expect(taperLays({ resolved: rig(setup), bay: EMPTY }, [lay], UNWATCHED)).toEqual([lay]);
    const ranged: Rig = { clock: [0, 60], b: ASIDE };
    const none = { ...laid(ranged), outcome: 'no-way' as const };
    expect(taperLays({ resolved: rig(ranged), bay: EMPTY }, [none], UNWATCHED)).toEqual([none]);
  });
});
