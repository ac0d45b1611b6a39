import { describe, expect, it } from 'vitest';
import { clocksInTurn, isInTurn, nearestInTurn, wrapRadians } from '../../../shared/base/turnRange.ts';

const DEG = Math.PI / 180;
const range = (from: number, to: number) => ({ fromRad: from * DEG, toRad: to * DEG });

describe('a part of a turn', () => {
  it('holds what lies in it, over 12 o’clock and whole turns on', () => {
    for (const deg of [-30, 0, 20, 330, 350, 360, 380]) expect(isInTurn(range(-30, 20), deg * DEG)).toBe(true);
    for (const deg of [21, 180, 329, -31]) expect(isInTurn(range(-30, 20), deg * DEG)).toBe(false);
    for (const deg of [0, 90, 359]) expect(isInTurn(range(10, 370), deg * DEG)).toBe(true);
  });

  it('brings what lies outside to the nearer limit round the turn', () => {
    const near = (from: number, to: number, deg: number) => nearestInTurn(range(from, to), deg * DEG) / DEG;
    expect(near(-30, 20, 40)).toBeCloseTo(20, 9);
    expect(near(-30, 20, 190)).toBeCloseTo(330, 9);
    expect(near(-30, 20, 170)).toBeCloseTo(20, 9);
    expect(near(-30, 20, -10)).toBeCloseTo(350, 9);
    expect(near(90, 90, 300)).toBeCloseTo(90, 9);
  });

  it('agrees with a look at every degree', () => {
    for (let from = -200; from <= 300; from += 37)
      for (let width = 0; width <= 350; width += 50)
        for (let deg = 0; deg < 360; deg += 11) {
          const got = nearestInTurn(range(from, from + width), deg * DEG);
          const apart = (a: number, b: number) => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
          let least = Number.POSITIVE_INFINITY;
          for (let clock = from; clock <= from + width; clock++) least = Math.min(least, apart(clock * DEG, deg * DEG));
          expect(isInTurn(range(from, from + width), got)).toBe(true);
          expect(apart(got, deg * DEG)).toBeCloseTo(least, 9);
        }
  });

  it('spreads clocks over it with both limits', () => {
    expect(clocksInTurn(range(-45, 45), 3).map((c) => Math.round(c / DEG))).toEqual([315, 0, 45]);
    expect(clocksInTurn(range(90, 90), 5)).toHaveLength(1);
    expect(wrapRadians(-Math.PI / 2)).toBeCloseTo(1.5 * Math.PI, 12);
  });
});
