import { describe, expect, it } from 'vitest';
import { degreesToRadians } from '../../../../shared/base/units.ts';
import { distance, dot, sub, type Vec3 } from '../../../../shared/base/vec3.ts';
import { cutOffMm, dropMm } from '../../../../shared/document/parts/cutOff.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { fitEnd } from '../../../../shared/solve/ends/endPose.ts';

function endOf(bendAngleDeg: number): End {
  return {
    id: 'end',
    name: 'End',
    seat: 'flare-37',
    dash: 8,
    bendAngleDeg,
    seatToBendMm: 30,
    bendToShoulderMm: 47,
    shoulderToMouthMm: 12,
    collarDiameterMm: 22,
    joint: 'crimp',
    material: 'steel',
    turning: 'swivel',
    provenance: 'example',
    source: 'test',
  };
}
const PORT = { seatPoint: [100, 0, 0] as Vec3, axis: [0, 0, 1] as Vec3, up: [1, 0, 0] as Vec3 };

function close(a: Vec3, b: Vec3): void {
  expect(distance(a, b)).toBeLessThan(1e-12 * 1000);
}

describe('fitEnd', () => {
  it('puts a straight end along the port axis', () => {
    const f = fitEnd(PORT, endOf(0), 0);
    close(f.mouthPoint, [100, 0, 89]);
    close(f.hoseAxis, [0, 0, 1]);
  });

  it("turns a square end to 12 o'clock at clock 0 and clockwise, seen looking out along the axis, as the clock grows", () => {
    close(fitEnd(PORT, endOf(90), 0).hoseAxis, [1, 0, 0]);
    // Looking along +z with +x up, the right hand is axis x up = +y.
    close(fitEnd(PORT, endOf(90), degreesToRadians(90)).hoseAxis, [0, 1, 0]);
    close(fitEnd(PORT, endOf(90), 0).shoulderPoint, [147, 0, 30]);
  });

  it.each([0, 30, 45, 60, 90, 120, 150])('has C and drop of a %d degree end as its own lengths say', (angle) => {
    const end = endOf(angle);
    const f = fitEnd(PORT, end, 0.3);
    const seatToShoulder = sub(f.shoulderPoint, f.seatPoint);
    expect(dot(seatToShoulder, f.hoseAxis)).toBeCloseTo(cutOffMm(end), 10);
    const along = dot(seatToShoulder, f.hoseAxis);
    expect(Math.sqrt(dot(seatToShoulder, seatToShoulder) - along * along)).toBeCloseTo(dropMm(end), 6);
  });

  it('gives the outlet direction square to the hose as its clock reference', () => {
    for (const angle of [30, 90, 150]) {
      const f = fitEnd(PORT, endOf(angle), 1.1);
      expect(dot(f.up, f.hoseAxis)).toBeCloseTo(0, 12);
      expect(dot(f.up, f.outletAxis)).toBeCloseTo(Math.sin(degreesToRadians(angle)), 12);
    }
  });
});

describe('an end bent by half a turn', () => {
  const half: End = { ...endOf(180), seatToBendMm: 25, bendToShoulderMm: 10, dropMm: 40 };

  it('comes back beside its port, a drop away to its clock', () => {
    const f = fitEnd(PORT, half, degreesToRadians(90));
    close(f.hoseAxis, [0, 0, -1]);
    close(f.shoulderPoint, [100, 40, 15]);
    close(f.mouthPoint, [100, 40, 3]);
    close(f.bendPoint, [100, 20, 45]);
    const seatToShoulder = sub(f.shoulderPoint, f.seatPoint);
    expect(dot(seatToShoulder, f.hoseAxis)).toBeCloseTo(cutOffMm(half), 12);
  });

  it('reads its clock from the hose axis to the seat, as ends bent a little less do', () => {
    const f = fitEnd(PORT, half, 0.4);
    close(f.up, fitEnd(PORT, endOf(180 - 1e-9), 0.4).up);
    expect(dot(f.up, sub(f.seatPoint, f.shoulderPoint))).toBeCloseTo(40, 9);
    expect(dot(f.up, f.hoseAxis)).toBeCloseTo(0, 12);
  });

  it('has a body from seat to mouth that turns with its clock and its port', () => {
    const f = fitEnd(PORT, half, 0);
    expect(f.body[0]).toEqual(PORT.seatPoint);
    expect(f.body.at(-2)).toEqual(f.shoulderPoint);
    expect(f.body.at(-1)).toEqual(f.mouthPoint);
    const turn = (v: Vec3): Vec3 => [-v[1], v[0], v[2]];
    const other = fitEnd({ seatPoint: turn(PORT.seatPoint), axis: [0, 0, 1], up: [0, 1, 0] }, half, 0);
    for (const [i, p] of f.body.entries()) close(turn(p), other.body[i] ?? [0, 0, 0]);
  });
});

describe('the body of an end', () => {
  it('is its corners where the radius of its tube is not known, and round where it is', () => {
    expect(fitEnd(PORT, endOf(90), 0).body).toHaveLength(4);
    const round = fitEnd(PORT, { ...endOf(90), tubeBendRadiusMm: 15 }, 0).body;
    expect(round.length).toBeGreaterThan(10);
    for (const p of round.slice(1, -2)) expect(distance(p, [115, 0, 15])).toBeCloseTo(15, 9);
  });
});
