import { distance } from '../../base/vec3.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import type { CutSpan, Span } from './spans.ts';

/**
 * How much longer than taut each span is made, mm, so that together they take up `extraMm`: the slack is of the whole hose, and
 * each span takes what it bows out by gently. First as far as bows of BOWED_TO[0] times the least radius take it, then tighter ones;
 * each time the spans that bend before those that lie straight: between two clamps in line a builder leaves none
 * (common practice, no source), and a short one is given some only where all else is full. What no span has room for at the least radius goes to those that bend, by length. A span tied to
 * another hose takes what it needs to lie like that one.
 */
export function shareSlack(spans: readonly Span[], extraMm: number, minRadiusMm: number): number[] {
  const tied = spans.map((s) => s.tiedSlackMm ?? 0);
  const takenMm = sumOf(tied);
  if (takenMm > 0 && extraMm >= 0 && takenMm > extraMm) return tied.map((mm) => (extraMm * mm) / takenMm);
  const free = spans.map((s) => (s.tiedSlackMm === undefined ? s.tautMm : 0));
  const bent = spans.map((s, i) => (s.turningRad > BENT_RAD ? (free[i] as number) : 0));
  let shares = free.map(() => 0);
  let leftMm = extraMm - takenMm;
  const share = (weights: readonly number[], most: readonly number[]): void => {
    const next = sharedUpTo(leftMm, shares, weights, most);
    leftMm -= sumOf(next) - sumOf(shares);
    shares = next;
  };
  const bowing = free.map((mm, i) => (mm > SHORT_RADII * minRadiusMm ? mm : (bent[i] as number)));
  const roomAt = (radiusMm: number): number[] => free.map((mm) => bowRoomMm(mm, radiusMm));
  for (const times of BOWED_TO) {
    share(bent, roomAt(times * minRadiusMm));
    share(bowing, roomAt(times * minRadiusMm));
  }
  share(free, roomAt(minRadiusMm));
  share(
    bent.some((w) => w > 0) ? bent : free,
    free.map(() => Number.POSITIVE_INFINITY),
  );
  return shares.map((mm, i) => mm + (tied[i] as number));
}

/** Least radii. A straight span shorter than this would bend tighter than it may with 5 % of slack (the elastica clamped at both ends). */
const SHORT_RADII = 2.84;

/** Least radii to which spans bow out, one after the other. */
const BOWED_TO = [3, 2, 1.5, 1] as const;

/**
 * How much longer than the distance of two clamps in line a hose between them is when it bows out to a radius, mm. Its bow is
 * 1 - cos, so that the curvature is 4 pi sqrt(more) / length^1.5 (Euler's elastica, clamped at both ends, where it bows little). The distance
 * stands for the length here, so that a hose with 2 % more bends 3 % less than that.
 */
export function bowRoomMm(lengthMm: number, radiusMm: number): number {
  return lengthMm ** 3 / (4 * Math.PI * radiusMm) ** 2;
}

/** Shares with `mm` more given out by weight, above or below zero, none raised over its most. */
function sharedUpTo(
  mm: number,
  shares: readonly number[],
  weights: readonly number[],
  most: readonly number[],
): number[] {
  const raised = [...shares];
  for (let leftMm = mm; leftMm !== 0; ) {
    const open = weights.map((w, i) => ((raised[i] as number) < (most[i] as number) ? w : 0));
    const total = sumOf(open);
    if (total === 0) break;
    const wanted = open.map((w) => (leftMm * w) / total);
    const isFull = wanted.map((more, i) => (raised[i] as number) + more > (most[i] as number));
    for (const [i, more] of wanted.entries()) {
      if (!isFull.some(Boolean)) raised[i] = (raised[i] as number) + more;
      else if (isFull[i]) raised[i] = most[i] as number;
    }
    leftMm = isFull.some(Boolean) ? mm - (sumOf(raised) - sumOf(shares)) : 0;
  }
  return raised;
}

function sumOf(list: readonly number[]): number {
  let sum = 0;
  for (const mm of list) sum += mm;
  return sum;
}

/** rad. A stretch that turns less than 10 degrees in all counts as straight for sharing slack. */
const BENT_RAD = 0.175;

/**
 * How long the spans of a hose are, mm, that was of other lengths before. What it has grown by, or lost, is in each in proportion to the
 * slack that was in it, so that what lies straight between two clamps stays so; what it lost beyond that comes out of what the ways
 * are longer than the distance they go. As pressure comes and goes a hose moves in its clamps that far.
 */
export function grownLengths(cut: readonly CutSpan[], beforeMm: readonly number[]): readonly number[] {
  const wanted = cut.map(({ lengthMm }) => lengthMm);
  if (beforeMm.length !== cut.length || cut.length === 1) return wanted;
  const grownMm = sumOf(wanted) - sumOf(beforeMm);
  const free = (mm: (span: Span, i: number) => number): number[] =>
    cut.map(({ span }, i) => (span.locked === undefined ? Math.max(0, mm(span, i)) : 0));
  const slack = free((span, i) => (beforeMm[i] as number) - span.tautMm);
  const bow = free((span) => span.tautMm - chordMm(span));
  const beyondMm = Math.max(0, -grownMm - sumOf(slack));
  if (sumOf(slack) === 0 || (beyondMm > 0 && sumOf(bow) === 0)) return wanted;
  const perSlack = (grownMm + beyondMm) / sumOf(slack);
  const perBow = beyondMm > 0 ? beyondMm / sumOf(bow) : 0;
  return beforeMm.map((mm, i) => mm + perSlack * (slack[i] as number) - perBow * (bow[i] as number));
}

function chordMm({ guess }: Span): number {
  return distance((guess[0] as Pose).point, (guess[guess.length - 1] as Pose).point);
}
