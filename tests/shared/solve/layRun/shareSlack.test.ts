import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { leastRadius } from '../../../../shared/geometry/curveLimits.ts';
import { FINE, relaxSpan } from '../../../../shared/solve/layRun/relaxSpan.ts';
import { bowRoomMm, grownLengths, shareSlack } from '../../../../shared/solve/layRun/shareSlack.ts';
import type { Span } from '../../../../shared/solve/layRun/spans.ts';

const RADIUS_MM = 50;
const END = { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] } as const;

function span(tautMm: number, turningDeg: number, more: Partial<Span> = {}): Span {
  return { a: END, b: END, guess: [], tautMm, turningRad: (turningDeg * Math.PI) / 180, ...more };
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

describe('what a stretch between two clamps in line has room for', () => {
  it.each([
    [80, 50],
    [120, 50],
    [150, 60],
    [300, 150],
  ])('bows %d mm of hose out to %d mm or a little over, as a relaxed rod does', (chordMm, radiusMm) => {
    const moreMm = bowRoomMm(chordMm, radiusMm);
    const lengthMm = chordMm + moreMm;
    const bowed = relaxSpan(
      { minRadiusMm: radiusMm, stiffnessNmm2: 50000, weightNPerMm: 0 },
      {
        a: END,
        b: { kind: 'held', point: [chordMm, 0, 0], direction: [1, 0, 0] },
        lengthMm,
        guess: Float64Array.from([0, 0, 0, chordMm / 2, 0, chordMm / 10, chordMm, 0, 0]),
      },
      UNWATCHED,
      FINE,
    )!;
    const found = leastRadius(bowed.curve, 0.0002).found;
    expect(found / radiusMm).toBeGreaterThan(1);
    expect(found / radiusMm).toBeLessThan(1 + (1.5 * moreMm) / chordMm);
  });

  it('is what bends a hose to length / 2.84 at 5 % of its length (elastica clamped at both ends), within 1.2 %', () => {
    const [lengthMm, radiusMm] = [284, 100];
    expect(Math.abs(Math.sqrt(bowRoomMm(lengthMm, radiusMm) / (0.05 * lengthMm)) - 1)).toBeLessThan(0.012);
  });
});

describe('slack shared among stretches between clamps', () => {
  it('gives a short stretch no more than it bows out to at the least radius: 1.3 of 35 mm for one of 80 mm', () => {
    const shares = shareSlack([span(300, 40), span(80, 30), span(320, 60)], 35, RADIUS_MM);
    expect(sum(shares)).toBeCloseTo(35, 9);
    expect(shares[1]).toBeLessThanOrEqual(80 ** 3 / (16 * Math.PI ** 2 * RADIUS_MM ** 2));
    expect(shares[1]).toBeLessThan(1.3);
  });

  it('leaves none in what lies straight between clamps while what bends has room', () => {
    const shares = shareSlack([span(300, 40), span(300, 2), span(300, 40)], 10, RADIUS_MM);
    expect(shares).toEqual([5, 0, 5]);
  });

  it('is never over the room of one stretch while another has room, adds up, and is the same from the other end', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 300; i++) {
      const spans = Array.from({ length: 2 + Math.floor(4 * random()) }, () =>
        span(30 + 400 * random(), 60 * random()),
      );
      const room = spans.map((s) => bowRoomMm(s.tautMm, RADIUS_MM));
      const extraMm = 1.2 * sum(room) * random();
      const shares = shareSlack(spans, extraMm, RADIUS_MM);
      expect(sum(shares)).toBeCloseTo(extraMm, 6);
      expect(Math.min(...shares)).toBeGreaterThan(-1e-9);
      const over = shares.map((mm, k) => mm - (room[k] as number));
      if (extraMm <= sum(room)) expect(Math.max(...over)).toBeLessThan(1e-9);
      const back = shareSlack([...spans].reverse(), extraMm, RADIUS_MM).reverse();
      expect(Math.max(...shares.map((mm, k) => Math.abs(mm - (back[k] as number))))).toBeLessThan(1e-6);
    }
  });

  it('lets a stretch that is tied to another hose have what it takes', () => {
    const shares = shareSlack([span(300, 40), span(100, 30, { tiedSlackMm: 4 }), span(300, 40)], 24, RADIUS_MM);
    expect(shares).toEqual([10, 4, 10]);
    expect(shareSlack([span(300, 40), span(100, 30, { tiedSlackMm: 4 })], 2, RADIUS_MM)).toEqual([0, 2]);
  });

  it('takes a hose shorter than its way from what bends, by length', () => {
    expect(shareSlack([span(300, 40), span(200, 2), span(100, 40)], -4, RADIUS_MM)).toEqual([-3, 0, -1]);
  });
});

describe('a hose of another length between its clamps', () => {
  const cut = (tautMm: number[], lengthsMm: number[]) =>
    tautMm.map((mm, i) => {
      const guess = [0, 0.9 * mm].map((x) => ({ point: [x, 0, 0] as const, direction: [1, 0, 0] as const }));
      return { span: span(mm, 40, { guess }), lengthMm: lengthsMm[i] as number };
    });

  it('has what it grew by, or lost, in the slack of each stretch alike; one without slack stays', () => {
    const before = [330, 80, 310];
    expect(grownLengths(cut([300, 80, 300], [340, 82, 314]), before)).toEqual([342, 80, 314]);
    expect(grownLengths(cut([300, 80, 300], [310, 80, 310]), before)).toEqual([315, 80, 305]);
  });

  it('loses beyond its slack what its ways are longer than the distance they go, and adds up', () => {
    const [a, b, c] = grownLengths(cut([300, 80, 300], [290, 78, 290]), [330, 80, 310]);
    expect(a! + b! + c!).toBeCloseTo(658, 9);
    expect([a, b, c].map((mm, i) => mm! / [300, 80, 300][i]!)).toEqual(
      [0, 1, 2].map(() => expect.closeTo(658 / 680, 9)),
    );
  });

  it('stays as it lay where it is as long as before', () => {
    expect(grownLengths(cut([300, 80, 300], [331, 81, 308]), [330, 80, 310])).toEqual([330, 80, 310]);
  });
});
