import { expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { sleeveCut } from '../../../../shared/document/lay/sleeveCut.ts';
import { turnedAngleRad } from '../../../../shared/document/lay/turnedAngle.ts';

/** Straight, a bend of radius R through an angle up, straight; and a bend back if asked: all in one plane. */
function bent(radiusMm: number, angleRad: number, stepMm: number): Vec3[] {
  const steps = Math.ceil((radiusMm * angleRad) / stepMm);
  const arc = Array.from({ length: steps + 1 }, (_, i): Vec3 => {
    const at = (angleRad * i) / steps;
    return [100 + radiusMm * Math.sin(at), radiusMm * (1 - Math.cos(at)), 0];
  });
  const [x, y] = arc.at(-1)!;
  const end: Vec3 = [x + 50 * Math.cos(angleRad), y + 50 * Math.sin(angleRad), 0];
  return [[0, 0, 0], [50, 0, 0], ...arc, end];
}

const SOCKET = { shoulderToMouthMm: 22 };
const HOSE = { cutLengthMm: 300, hoseDiameterMm: 15.7, sleeve: { insideDiameterMm: 19.7 }, a: SOCKET, b: SOCKET };

it('turns by what the arc turns, whatever its radius, and by nothing when straight', () => {
  expect(turnedAngleRad(bent(100, Math.PI / 2, 2))).toBeCloseTo(Math.PI / 2, 9);
  expect(turnedAngleRad(bent(250, 1, 5))).toBeCloseTo(1, 9);
  expect(
    turnedAngleRad([
      [0, 0, 0],
      [1, 0, 0],
      [1, 0, 0],
      [5, 0, 0],
    ]),
  ).toBe(0);
  // Both bends of an S count.
  expect(
    turnedAngleRad([
      [0, 0, 0],
      [1, 0, 0],
      [1, 1, 0],
      [2, 1, 0],
    ]),
  ).toBeCloseTo(Math.PI, 9);
});

it('is 1/8 in past each socket on a straight hose, and past the shoulder where the socket goes on there', () => {
  const straight = {
    points: [
      [0, 0, 0],
      [300, 0, 0],
    ] as Vec3[],
  };
  expect(sleeveCut({ ...HOSE, centreline: straight }).cutLengthMm).toBeCloseTo(306.35, 9);
  const long = { ...HOSE, a: { ...SOCKET, collarLengthMm: 30 } };
  expect(sleeveCut({ ...long, centreline: straight }).cutLengthMm).toBeCloseTo(306.35 + 8, 9);
});

it('is as long as its own middle, drawn half its play outside the hose: measured on that line', () => {
  // Oracle: the length of the sleeve's own arc at R + play / 2, less that of the hose's at R.
  const centreline = { points: bent(100, Math.PI / 2, 1) };
  const { cutLengthMm, allowanceMm, turnedDeg, stiffMm } = sleeveCut({ ...HOSE, centreline });
  const arcMm = (radiusMm: number): number => (radiusMm * Math.PI) / 2;
  expect(allowanceMm).toBeCloseTo(arcMm(102) - arcMm(100), 6);
  expect(cutLengthMm).toBeCloseTo(306.35 + allowanceMm, 9);
  expect(turnedDeg).toBeCloseTo(90, 6);
  // Its outer side, when it hangs on the inside of the bend's hose: 7.85 + 4 mm out.
  expect(stiffMm - 306.35).toBeCloseTo(arcMm(111.85) - arcMm(100), 6);
});

it('takes more with more bend and with more bore, never less than straight', () => {
  const at = (angle: number, bore: number): number =>
    sleeveCut({ ...HOSE, sleeve: { insideDiameterMm: bore }, centreline: { points: bent(120, angle, 1) } }).cutLengthMm;
  expect(at(1.5, 19.7)).toBeGreaterThan(at(1, 19.7));
  expect(at(1, 24)).toBeGreaterThan(at(1, 19.7));
  expect(at(1, 15)).toBeCloseTo(306.35, 9);
});
