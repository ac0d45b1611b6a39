import { degreesToRadians } from '../../../shared/base/units.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';

/** A line painted on the hose beside a collar, where that end's outlet stands round it. */
export interface ClockMark {
  readonly end: 'A' | 'B';
  /** across the hose as drawn, of its radius: 1 = at the bottom, 6 o'clock; -1 = at the top */
  readonly down: number;
  /** on the far side of the hose, so that the drawing shows it through */
  readonly hidden: boolean;
}

/** Shares of a radius that are too little to say that a mark is on the far side. */
const EDGE_SHARE = 0.05;

/**
 * The clock's marks on the straight hose drawn with END A first and END A's outlet down: looking along it from END A,
 * counter-clockwise from 6 o'clock comes towards the reader. None where the clock is free.
 */
export function clockMarks({ clock }: Pick<Lay, 'clock'>): readonly ClockMark[] {
  if (clock.kind !== 'angle') return [];
  const angle = degreesToRadians(clock.deg);
  return [
    { end: 'A', down: 1, hidden: false },
    { end: 'B', down: Math.cos(angle), hidden: Math.sin(angle) < -EDGE_SHARE },
  ];
}
