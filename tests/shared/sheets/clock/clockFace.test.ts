import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { degreesApart, degreesToRadians, radiansToDegrees, wrapDegrees } from '../../../../shared/base/units.ts';
import { scale, signedAngleAbout, turnAbout, type Vec3 } from '../../../../shared/base/vec3.ts';
import { clockFace, wrongWayRound } from '../../../../shared/sheets/clock/clockFace.ts';
import { clockSentence } from '../../../../shared/sheets/clock/clockWords.ts';
import { sideView } from '../../../../shared/sheets/clock/sideView.ts';
import { wrapStrip } from '../../../../shared/sheets/clock/wrapStrip.ts';

/** The straight hose along +X from A to B. Looking along an axis, a right-handed turn about it runs clockwise. */
const ALONG: Vec3 = [1, 0, 0];

/** END B's outlet by the definition: from the near outlet counter-clockwise by the clock, looking along the hose from A. */
function outletB(outletA: Vec3, clockDeg: number): Vec3 {
  return turnAbout(outletA, ALONG, -degreesToRadians(clockDeg));
}

function clockwiseFrom(twelve: Vec3, hand: Vec3, look: Vec3): number {
  return wrapDegrees(radiansToDegrees(signedAngleAbout(look, twelve, hand)));
}

const random = seededRandom(270);
const CLOCKS = [0, 30, 90, 120, 180, 210, 240, 270, 359.9, ...Array.from({ length: 300 }, () => random() * 360)];

describe('clock faces', () => {
  test('270: seen from A, B at 12 and A at 9; 90 gives A at 3', () => {
    expect(clockFace(270, 'A')).toEqual({ near: { end: 'A', clockwiseDeg: 270 }, far: { end: 'B', clockwiseDeg: 0 } });
    expect(clockFace(90, 'A').near).toEqual({ end: 'A', clockwiseDeg: 90 });
    expect(clockFace(270, 'B').near).toEqual({ end: 'B', clockwiseDeg: 270 });
  });
  test('agree with the outlets in space, from either end', () => {
    for (const deg of CLOCKS) {
      const start = turnAbout([0, 0, 1], ALONG, random() * 7);
      const outlet = { A: start, B: outletB(start, deg) };
      for (const viewer of ['A', 'B'] as const) {
        const look = viewer === 'A' ? ALONG : scale(ALONG, -1);
        const { near, far } = clockFace(deg, viewer);
        const seen = clockwiseFrom(outlet[far.end], outlet[near.end], look);
        expect(far.clockwiseDeg).toBe(0);
        expect(degreesApart(seen, near.clockwiseDeg)).toBeLessThan(1e-9);
      }
    }
  });
  test("turned so that the near outlet is at 6, the far one stands the clock's turn counter-clockwise of it", () => {
    for (const deg of CLOCKS) {
      const { near, far } = clockFace(deg, 'A');
      const farWithNearAt6 = wrapDegrees(far.clockwiseDeg - near.clockwiseDeg + 180);
      expect(degreesApart(180 - farWithNearAt6, deg)).toBeLessThan(1e-9);
    }
  });
  test('sign test of the military sheet: near down, far at 3 is 90; far at 9 is 270', () => {
    const farWithNearAt6 = (deg: number): number => wrapDegrees(180 - clockFace(deg, 'A').near.clockwiseDeg);
    expect(farWithNearAt6(90)).toBe(90);
    expect(farWithNearAt6(270)).toBe(270);
  });
  test('the wrong way round is the mirror image; 0 and 180 are their own', () => {
    expect([0, 90, 180, 270, 240].map(wrongWayRound)).toEqual([0, 270, 180, 90, 120]);
    for (const deg of CLOCKS) {
      const mirrored = wrapDegrees(-clockFace(deg, 'A').near.clockwiseDeg);
      expect(degreesApart(clockFace(wrongWayRound(deg), 'A').near.clockwiseDeg, mirrored)).toBeLessThan(1e-9);
    }
  });
  test('the sentence names ends and hours, the same hour from both ends', () => {
    expect(clockSentence(270, 'A')).toBe(
      "Lay the hose straight. Look from END A along the hose to END B. Turn it until the outlet of END B points to 12 o'clock. The outlet of END A then points to 9 o'clock.",
    );
    expect(clockSentence(270, 'B')).toContain(
      "outlet of END A points to 12 o'clock. The outlet of END B then points to 9 o'clock",
    );
    expect(clockSentence(90, 'A')).toContain("END A then points to 3 o'clock");
  });
});

describe('side views', () => {
  test('agree with the outlets in space: x right, y up the paper, z toward the reader', () => {
    for (const deg of CLOCKS) {
      const b = outletB([0, -1, 0], deg);
      const aDown = sideView(deg, 'A');
      expect(aDown.A.up).toBe(-1);
      expect(aDown.B.up).toBeCloseTo(b[1], 9);
      expect(aDown.B.toReader).toBeCloseTo(b[2], 9);
      const a = turnAbout([0, -1, 0], ALONG, degreesToRadians(deg));
      const bDown = sideView(deg, 'B');
      expect(bDown.B.up).toBe(-1);
      expect(bDown.A.up).toBeCloseTo(a[1], 9);
      expect(bDown.A.toReader).toBeCloseTo(a[2], 9);
    }
  });
});

describe('wrap strip', () => {
  test('story 4: 37.0 mm apart on a 49.3 mm circumference for 270 degrees on 15.7 mm', () => {
    const strip = wrapStrip(15.7, 270);
    expect(strip.arcMm).toBeCloseTo(36.992, 3);
    expect(strip.circumferenceMm).toBeCloseTo(49.323, 3);
  });
  test('wrapped round the hose in small steps, line A meets outlet A where line B is on outlet B', () => {
    for (const deg of [30, 90, 137.5, 270, 345]) {
      const radiusMm = 7.85;
      const strip = wrapStrip(2 * radiusMm, deg);
      const a: Vec3 = [0, 0, 1];
      const normalAtA = walkRound(outletB(a, deg), (strip.aMm - strip.bMm) / radiusMm);
      expect(normalAtA[1]).toBeCloseTo(a[1], 3);
      expect(normalAtA[2]).toBeCloseTo(a[2], 3);
    }
  });
  test('0 and 360 put both lines together', () => {
    expect(wrapStrip(20, 0).arcMm).toBe(0);
    expect(wrapStrip(20, 360).arcMm).toBe(0);
  });
});

/**
 * The outward normal after walking to the right on the print. A reader outside looks along -normal with END B's side
 * (+X) up; his right is look x up. Walked in steps, so that no formula of the strip is used.
 */
function walkRound(normal: Vec3, turns: number): Vec3 {
  const steps = 20_000;
  let [, y, z] = normal;
  for (let i = 0; i < steps; i++) {
    const [rightY, rightZ] = [-z, y]; // (-n) x (1, 0, 0) = (0, -nz, ny)
    y += (rightY * turns) / steps;
    z += (rightZ * turns) / steps;
    const size = Math.hypot(y, z);
    y /= size;
    z /= size;
  }
  return [0, y, z];
}
