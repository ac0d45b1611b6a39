import { describe, expect, it } from 'vitest';
import { farHandDeg } from '../../../renderer/panels/runs/words.ts';
import { outOfDrawing, sideOutlets } from '../../../renderer/panels/straightView/outlets.ts';
import { inchTicks, mmTicks, straightScale } from '../../../renderer/panels/straightView/scale.ts';
import { bendShares, fallPicture, nearMarks } from '../../../renderer/panels/straightView/tracks.ts';
import type { Clearance, EndPose } from '../../../shared/document/lay/schema.ts';
import { sampleLay } from '../sampleBench.ts';

const GUTTERS = { leftPx: 170, rightPx: 30 };

describe('straightScale', () => {
  it('fits ends and hose between the gutters and turns pixels back into places', () => {
    const lay = sampleLay('feed', { cutLengthMm: 617.4, cutOffMm: { a: 38, b: 22 } });
    const scale = straightScale(lay, 1000, GUTTERS);
    expect(scale.x(-38)).toBeGreaterThan(170);
    expect(scale.x(617.4 + 22)).toBeLessThan(970);
    for (const arc of [0, 1, 300, 617.4]) expect(scale.arcAt(scale.x(arc))).toBeCloseTo(arc, 9);
    expect(scale.x(200) - scale.x(100)).toBeCloseTo(100 * scale.pxPerMm, 9);
    expect([scale.arcAt(0), scale.arcAt(5000)]).toEqual([0, 617.4]);
  });

  it('never mirrors, however narrow the window', () => {
    const scale = straightScale(sampleLay('feed'), 50, GUTTERS);
    expect(scale.x(10)).toBeGreaterThan(scale.x(0));
  });
});

describe('the rule', () => {
  it('numbers tens of millimetres and whole inches, lines never closer than 4 px', () => {
    const mm = mmTicks(100, 1.2);
    expect(mm.map((t) => t.mm).slice(0, 3)).toEqual([0, 5, 10]);
    expect(mm.filter((t) => t.number !== undefined).map((t) => t.number)).toEqual(['0', '50', '100']);
    const inch = inchTicks(101.6, 3);
    expect(inch.at(-1)).toMatchObject({ mm: 101.6, tall: 1, number: '4' });
    expect(inch[1]?.mm).toBeCloseTo(25.4 / 16, 12);
    expect((inch[1]?.mm ?? 0) * 3).toBeGreaterThanOrEqual(4);
  });
});

/** An end with C = 30 along the hose and its seat 40 off the axis, in the direction of `up`. */
function elbow(hoseAxis: [number, number, number], up: [number, number, number]): EndPose {
  const off = (along: number, side: number) =>
    [0, 1, 2].map((i) => -along * (hoseAxis[i] ?? 0) + side * (up[i] ?? 0)) as [number, number, number];
  return {
    seatPoint: off(30, 40),
    bendPoint: off(30, 0),
    shoulderPoint: [0, 0, 0],
    mouthPoint: off(-18, 0),
    outletAxis: up,
    up,
    hoseAxis,
    ownClockDeg: 0,
    ownClockChosen: true,
  };
}

describe('ends on the straight hose', () => {
  const ends = { a: elbow([1, 0, 0], [0, 0, 1]), b: elbow([0, 1, 0], [1, 0, 0]) };
  const at = (deg: number) => sideOutlets(sampleLay('x', { ends, clock: { kind: 'angle', deg, toleranceDeg: 1 } })).b;

  it('keeps C, drop and collar of each end, whichever way it points in the bay', () => {
    const { a, b } = sideOutlets(sampleLay('x', { ends, clock: { kind: 'angle', deg: 0, toleranceDeg: 1 } }));
    for (const end of [a, b]) {
      expect(end.seatBeyondMm).toBeCloseTo(30, 9);
      expect(end.bendBeyondMm).toBeCloseTo(30, 9);
      expect(end.seatDownMm).toBeCloseTo(40, 9);
      expect(end.collarMm).toBeCloseTo(18, 9);
    }
  });

  it("turns END B by the clock: counter-clockwise from 6 o'clock as seen from END A, which is towards the reader first", () => {
    expect(at(90).seatTowardMm).toBeCloseTo(40, 9);
    expect(outOfDrawing(at(90))).toBe('toward');
    expect(at(180).seatDownMm).toBeCloseTo(-40, 9);
    expect(outOfDrawing(at(180))).toBeNull();
    expect(at(270).seatTowardMm).toBeCloseTo(-40, 9);
    expect(outOfDrawing(at(270))).toBe('away');
  });

  it("puts the far hand of the clock faces where counter-clockwise from 6 o'clock leads", () => {
    expect([0, 90, 180, 270].map(farHandDeg)).toEqual([180, 90, 0, 270]);
  });
});

describe('tracks', () => {
  it('shows 0 on a straight hose', () => {
    expect(bendShares(sampleLay('x')).every((p) => p.value === 0)).toBe(true);
  });

  it('says which way a hose falls', () => {
    const along = (heights: number[]) =>
      fallPicture(
        sampleLay('x', {
          centreline: {
            points: heights.map((z, i) => [i * 50, 0, z] as [number, number, number]),
            arcLengthMm: heights.map((_, i) => i * 50),
          },
        }),
      ).words;
    expect(along([0, 0, 0.5])).toBe('level');
    expect(along([50, 20, 0])).toBe('falls all the way, A to B');
    expect(along([0, 20, 50])).toBe('falls all the way, B to A');
    expect(along([50, 0, 20])).toBe('goes up and down');
  });

  it('names the tightest first, overlaps no names, and leaves out what is far off', () => {
    const clearance = (part: string, arcLengthMm: number, provenAtLeastMm: number): Clearance => ({
      to: { kind: 'skin', id: 'plain', part },
      clearanceMm: provenAtLeastMm,
      provenAtLeastMm,
      requiredMm: 10,
      at: { arcLengthMm, point: [0, 0, 0] },
      onThing: [0, 0, 0],
    });
    const clearances = [
      clearance('roomy', 11, 30),
      clearance('tight', 10, 5),
      clearance('near', 12, 12),
      clearance('far', 10, 400),
    ];
    const marks = nearMarks(
      { clearances },
      (mm) => mm,
      () => 100,
      500,
      2,
    );
    expect(marks.map((m) => [m.clearance.to.part, m.row])).toEqual([
      ['tight', 0],
      ['near', 1],
      ['roomy', undefined],
    ]);
    const [pushed] = nearMarks(
      { clearances: [clearance('edge', 480, 5)] },
      (mm) => mm,
      () => 100,
      500,
      2,
    );
    expect(pushed?.nameFromPx).toBe(400);
  });
});
