import { describe, expect, it } from 'vitest';
import { addScaled, distance, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { Lock, Run, Support } from '../../../../shared/document/project/schema.ts';
import { splineAlong } from '../../../../shared/geometry/cubicCurve.ts';
import { leastRadius } from '../../../../shared/geometry/curveLimits.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { relayNear } from '../../../../shared/solve/handLay/relayNear.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();

function project(more: Partial<Run>, seatB: [number, number, number] = [380, 240, 60]) {
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const a = examplePort('a', { seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1] });
  const b = examplePort('b', { seatPoint: seatB, axis: [0, -1, 0], up: [0, 0, 1] });
  return oneRunProject([a, b], [end, end], exampleHose({ minBendRadiusMm: 60 }), more);
}

function laid(more: Partial<Run>, seatB?: [number, number, number]): Lay {
  const resolved = project(more, seatB);
  return layRun({ project: resolved.project, bay: BAY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
}

/** Part of a lay as the project would have it locked. The first and last points are put nearer, as places between points are. */
function lockOf(lay: Lay, from: number, to: number): Lock {
  const { points } = lay.centreline;
  const [i, j] = [Math.floor(points.length * from), Math.floor(points.length * to)];
  const axis = (k: number): Vec3 => unit(addScaled(points[k + 1]!, points[k - 1]!, -1));
  return { id: 'stays', points: points.slice(i, j + 1), startAxis: [...axis(i)], endAxis: [...axis(j)] };
}

/** How far the locked stretch is from the lay, mm, looked at on its points: the lay's own are up to 4 mm apart. */
function offLock(lay: Lay, lock: Lock): number {
  const { points } = lay.centreline;
  const end = (k: number): Vec3 => points.at(k)!;
  const curve = splineAlong(
    Float64Array.from(points.flat()),
    unit(addScaled(end(1), end(0), -1)),
    unit(addScaled(end(-1), end(-2), -1)),
  );
  const places = Array.from({ length: curve.coefficients.length / 12 }, (_, i) => i).flatMap((i) =>
    Array.from({ length: 80 }, (_, k): Vec3 => {
      const u = k / 80;
      const of = (axis: number): number =>
        [0, 3, 6, 9].reduce((sum, o, power) => sum + curve.coefficients[12 * i + o + axis]! * u ** power, 0);
      return [of(0), of(1), of(2)];
    }),
  );
  return Math.max(...lock.points.map((p) => Math.min(...places.map((q) => distance(p, q)))));
}

describe('a locked stretch', () => {
  const before = laid({});
  const lock = lockOf(before, 0.4, 0.7);

  it('lies as it lay when nothing else changed: the whole run does', () => {
    const lay = laid({ locks: [lock] });
    expect(lay.outcome).toBe('laid');
    expect(offLock(lay, lock)).toBeLessThan(0.03);
    expect(Math.abs(lay.cutLengthMm - before.cutLengthMm)).toBeLessThan(0.05 * before.cutLengthMm);
    expect(lay.supports).toEqual([]);
  });

  it('stays where it is when a port moves, laid anew and laid again near by', () => {
    const seat: [number, number, number] = [400, 250, 75];
    const anew = laid({ locks: [lock] }, seat);
    expect(anew.outcome).toBe('laid');
    expect(offLock(anew, lock)).toBeLessThan(0.03);
    const resolved = project({ locks: [lock] }, seat);
    const context = { project: resolved.project, bay: BAY };
    const [near] = relayNear(context, resolved, resolved.runs[0]!, [before], before.centreline.points, UNWATCHED);
    expect(near!.ends.b.seatPoint).toEqual(seat);
    expect(offLock(near!, lock)).toBeLessThan(0.03);
  });

  it('goes on telling of a clamp that stands on it', () => {
    const { points } = before.centreline;
    const k = Math.floor(points.length * 0.55);
    const axis = unit(addScaled(points[k + 1]!, points[k - 1]!, -1));
    const clamp = { id: 'held', kind: 'clamp', point: points[k]!, axis: [...axis] } as Support;
    const lay = laid({ locks: [lock], supports: [clamp] });
    expect(lay.supports).toMatchObject([{ id: 'held', kind: 'clamp', proposed: false }]);
    expect(distance(lay.supports[0]!.at.point, points[k]!)).toBeLessThan(1e-6);
    expect(offLock(lay, lock)).toBeLessThan(0.03);
  });

  it('comes after the support it is said to come after', () => {
    const { points } = before.centreline;
    const k = Math.floor(points.length * 0.2);
    const axis = unit(addScaled(points[k + 1]!, points[k - 1]!, -1));
    const clamp = { id: 'first', kind: 'clamp', point: points[k]!, axis: [...axis] } as Support;
    const lay = laid({ supports: [clamp], locks: [{ ...lock, after: 'first' }] });
    expect(lay.supports.map((s) => s.id)).toEqual(['first']);
    expect(lay.supports[0]!.at.arcLengthMm).toBeLessThan(0.35 * lay.cutLengthMm);
    expect(offLock(lay, lock)).toBeLessThan(0.03);
  });
});

describe('the spline through points at any distances', () => {
  it('of a circle has its radius, however the points are spaced', () => {
    const turns = [0, 0.01, 0.05, 0.1, 0.16, 0.2, 0.26, 0.27, 0.33, 0.4];
    const at = (t: number): Vec3 => [80 * Math.cos(t), 80 * Math.sin(t), 0];
    const tangent = (t: number): Vec3 => [-Math.sin(t), Math.cos(t), 0];
    const nodes = Float64Array.from(turns.flatMap((t) => [...at(t)]));
    const curve = splineAlong(nodes, tangent(0), tangent(0.4));
    expect(Math.abs(leastRadius(curve, 1e-5).found - 80)).toBeLessThan(0.1);
    expect(curve.arcLengthMm.at(-1)).toBeCloseTo(32, 4);
  });
});
