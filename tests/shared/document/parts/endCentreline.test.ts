import { describe, expect, it } from 'vitest';
import { cutOffMm, dropMm } from '../../../../shared/document/parts/cutOff.ts';
import { type EndPoint, endCentreline } from '../../../../shared/document/parts/endCentreline.ts';

const END = { bendAngleDeg: 90, seatToBendMm: 30, bendToShoulderMm: 47, shoulderToMouthMm: 20 };

function lengthOf(points: readonly EndPoint[]): number {
  return points
    .slice(1)
    .reduce(
      (sum, p, i) => sum + Math.hypot(p.alongMm - (points[i]?.alongMm ?? 0), p.asideMm - (points[i]?.asideMm ?? 0)),
      0,
    );
}

describe('endCentreline', () => {
  it('is two legs and a corner where the radius of the tube is not known', () => {
    const { points, bend, shoulder, mouth } = endCentreline(END);
    expect(points).toHaveLength(4);
    expect(points[1]).toEqual(bend);
    expect(shoulder.alongMm).toBeCloseTo(30, 12);
    expect(shoulder.asideMm).toBeCloseTo(47, 12);
    expect(mouth.asideMm).toBeCloseTo(67, 12);
  });

  // C and drop of document/parts/cutOff.ts: the seat's centre against the hose axis and along it.
  it.each([0, 30, 45, 60, 90, 120, 150, 180])('has the C and the drop of an end bent by %d degrees', (bendAngleDeg) => {
    const end = { ...END, bendAngleDeg, ...(bendAngleDeg === 180 ? { dropMm: 44 } : {}) };
    const { shoulder, hose } = endCentreline(end);
    const along = shoulder.alongMm * hose.alongMm + shoulder.asideMm * hose.asideMm;
    const off = Math.abs(shoulder.alongMm * hose.asideMm - shoulder.asideMm * hose.alongMm);
    expect(along).toBeCloseTo(cutOffMm(end), 10);
    expect(off).toBeCloseTo(dropMm(end), 10);
  });

  // A round of radius r takes the corner's two tangents, 2 r tan(b/2), and gives the arc, r b.
  it.each([30, 45, 90, 120])('rounds a corner of %d degrees with the radius of the tube', (bendAngleDeg) => {
    const bendRad = (bendAngleDeg * Math.PI) / 180;
    const radius = 12;
    const { points } = endCentreline({ ...END, bendAngleDeg, tubeBendRadiusMm: radius });
    const whole = 30 + 47 + 20 - 2 * radius * Math.tan(bendRad / 2) + radius * bendRad;
    expect(lengthOf(points)).toBeGreaterThan(whole - (whole * bendRad) / 1900);
    expect(lengthOf(points)).toBeLessThanOrEqual(whole + 1e-9);
    for (const point of points.slice(1, -2)) {
      const off = Math.abs(Math.hypot(point.alongMm - (30 - radius * Math.tan(bendRad / 2)), point.asideMm - radius));
      expect(off).toBeCloseTo(radius, 9);
    }
  });

  it('takes a radius that is too large for the legs as the largest that fits', () => {
    const { points } = endCentreline({ ...END, tubeBendRadiusMm: 500 });
    expect(points[1]).toEqual({ alongMm: 0, asideMm: 0 });
    const end = points.at(-3);
    expect(end?.alongMm).toBeCloseTo(30, 9);
    expect(end?.asideMm).toBeCloseTo(30, 9);
  });

  it('turns by half with the axes a drop apart: a half circle, or two quarters and a straight', () => {
    const half = { ...END, bendAngleDeg: 180, seatToBendMm: 25, bendToShoulderMm: 10, dropMm: 40 };
    const circle = endCentreline(half);
    expect(circle.shoulder).toEqual({ alongMm: 15, asideMm: 40 });
    expect(circle.mouth).toEqual({ alongMm: -5, asideMm: 40 });
    expect(circle.bend).toEqual({ alongMm: 45, asideMm: 20 });
    expect(lengthOf(circle.points)).toBeCloseTo(25 + 20 * Math.PI + 10 + 20, 0);
    const quarters = endCentreline({ ...half, tubeBendRadiusMm: 15 });
    expect(lengthOf(quarters.points)).toBeCloseTo(25 + 15 * Math.PI + 10 + 10 + 20, 0);
    expect(Math.max(...quarters.points.map((p) => p.alongMm))).toBeCloseTo(40, 9);
    expect(quarters.shoulder).toEqual(circle.shoulder);
  });
});
