import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { degreesToRadians } from '../../../../shared/base/units.ts';
import { coveredRad, placeInArc, ROUND_RAD, uncovered } from '../../../../shared/solve/hands/arcs.ts';
import { type Bar, blockedClocks } from '../../../../shared/solve/hands/blockedClocks.ts';
import type { Flat, Shadow } from '../../../../shared/solve/hands/layer.ts';

const BAR: Bar = { headRadiusMm: 22, cutMm: 12, halfWidthMm: 9, lengthMm: 160, withinNutMm: 14 };
const thing = { kind: 'skin', id: 'plain' } as const;

function shadow(...outline: readonly (readonly [number, number])[]): Shadow {
  return { thing, outline: outline.map(([x, y]) => ({ x, y })) };
}

/** A wall across clock 0 at a distance, wider than any bar is long. */
function wall(distanceMm: number): Shadow {
  return shadow([distanceMm, -1000], [distanceMm, 1000], [distanceMm + 5, 1000], [distanceMm + 5, -1000]);
}

const free = (shape: Shadow, bar = BAR) => ROUND_RAD - coveredRad(blockedClocks(bar, shape));

describe('walls, by closed forms', () => {
  // The bar's far corner is the farthest towards the wall: L cos(turn - asin(w / L)) = d.
  it.each([25, 40, 80, 159])('%d mm off, beyond the head', (d) => {
    const half = Math.acos(d / 160) + Math.asin(9 / 160);
    expect(free(wall(d))).toBeCloseTo(2 * (Math.PI - half), 12);
  });

  // The corner of the cut is the farthest back: the head's reach at psi off straight away is R cos(acos(c / R) - psi).
  it.each([12.5, 15, 21.9])('%d mm off, where the open jaw looks at it', (d) => {
    const psi = Math.acos(12 / 22) - Math.acos(d / 22);
    expect(free(wall(d))).toBeCloseTo(2 * psi, 12);
  });

  it('nearer than the tips of the jaw leave nothing, and further than the handle take nothing', () => {
    expect(free(wall(12))).toBe(0);
    expect(blockedClocks(BAR, wall(160))).toEqual([]);
  });

  it('round the nut itself are let be', () => {
    expect(blockedClocks(BAR, shadow([-9, -9], [9, -9], [9, 9], [-9, 9]))).toEqual([]);
    expect(free(shadow([-11, -11], [11, -11], [11, 11], [-11, 11]))).toBe(0);
  });
});

describe('round things, by closed forms', () => {
  it('beside the handle takes asin((w + q) / r) to both sides', () => {
    const pin: Shadow = { thing, centre: { x: 0, y: 60 }, radiusMm: 8 };
    const [arc] = blockedClocks(BAR, pin);
    expect(arc?.width).toBeCloseTo(2 * Math.asin(17 / 60), 12);
    expect((arc?.from ?? 0) + (arc?.width ?? 0) / 2).toBeCloseTo(Math.PI / 2, 12);
  });

  it('across the end of the handle takes what the end meets', () => {
    const pin: Shadow = { thing, centre: { x: 165, y: 0 }, radiusMm: 8 };
    const half = Math.acos((165 ** 2 + 160 ** 2 - 64) / (2 * 165 * 160)) + Math.asin(9 / 160);
    expect(coveredRad(blockedClocks(BAR, pin))).toBeCloseTo(2 * half, 12);
    expect(blockedClocks(BAR, { ...pin, centre: { x: 168, y: 0 } })).toEqual([]);
  });
});

/** Whether a point is in the bar at a clock: the plain definition. */
function inBar({ headRadiusMm, cutMm, halfWidthMm, lengthMm }: Bar, clock: number, { x, y }: Flat): boolean {
  const along = x * Math.cos(clock) + y * Math.sin(clock);
  const across = y * Math.cos(clock) - x * Math.sin(clock);
  const r = Math.hypot(x, y);
  return (r <= headRadiusMm && along >= -cutMm) || (along >= 0 && Math.abs(across) <= halfWidthMm && r <= lengthMm);
}

function triangleAt(random: () => number): Flat[] {
  const about = random() * ROUND_RAD;
  const r = 13 + 170 * random() ** 2;
  const size = 60 * random();
  return Array.from({ length: 3 }, () => ({
    x: r * Math.cos(about) + size * (random() - 0.5),
    y: r * Math.sin(about) + size * (random() - 0.5),
  }));
}

const SAMPLES = 28;
function samplesOf([a, b, c]: readonly Flat[]): Flat[] {
  const at = (u: number, v: number): Flat => ({
    x: a!.x + (b!.x - a!.x) * u + (c!.x - a!.x) * v,
    y: a!.y + (b!.y - a!.y) * u + (c!.y - a!.y) * v,
  });
  return Array.from({ length: SAMPLES + 1 }, (_, i) =>
    Array.from({ length: SAMPLES + 1 - i }, (_, j) => at(i / SAMPLES, j / SAMPLES)),
  ).flat();
}

it('agrees with a slow twin that tries points of the outline at every clock', () => {
  const random = seededRandom(11);
  const off = degreesToRadians(7);
  for (let n = 0; n < 150; n++) {
    const outline = triangleAt(random);
    if (outline.every(({ x, y }) => Math.hypot(x, y) <= BAR.withinNutMm)) continue;
    const points = samplesOf(outline);
    const arcs = blockedClocks(BAR, { thing, outline });
    for (let deg = 0; deg < 360; deg += 3) {
      const clock = degreesToRadians(deg);
      const hit = (by: number) => points.some((p) => inBar(BAR, clock + by, p));
      const blocked = (by: number) => arcs.some((arc) => placeInArc(arc, clock + by) !== undefined);
      // Nothing that is hit is told as free; and what is told as blocked all round a clock is hit near it.
      if (hit(0)) expect(blocked(0)).toBe(true);
      if ([-off, 0, off].every(blocked)) expect([-off, -off / 2, 0, off / 2, off].some(hit)).toBe(true);
    }
  }
});

describe('what arcs leave of the round', () => {
  it('is told from its beginning on, over the end of the round', () => {
    expect(uncovered([])).toEqual([{ from: 0, width: ROUND_RAD }]);
    expect(uncovered([{ from: 0, width: ROUND_RAD }])).toEqual([]);
    expect(uncovered([{ from: 6, width: 1 }])).toMatchObject([{ from: 7 - ROUND_RAD, width: ROUND_RAD - 1 }]);
    expect(
      uncovered([
        { from: 1, width: 1 },
        { from: 3, width: 4 },
      ]),
    ).toMatchObject([
      { from: 7 - ROUND_RAD, width: 1 - (7 - ROUND_RAD) },
      { from: 2, width: 1 },
    ]);
  });

  it('agrees with a count of clocks', () => {
    const random = seededRandom(5);
    for (let n = 0; n < 200; n++) {
      const arcs = Array.from({ length: 1 + Math.floor(4 * random()) }, () => ({
        from: random() * ROUND_RAD,
        width: random() * 3,
      }));
      const left = uncovered(arcs);
      for (let k = 0; k < 300; k++) {
        const clock = random() * ROUND_RAD;
        const taken = arcs.some((arc) => placeInArc(arc, clock) !== undefined);
        expect(left.some((arc) => placeInArc(arc, clock) !== undefined)).toBe(!taken);
      }
    }
  });
});
