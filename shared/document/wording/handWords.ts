import type { NutHands } from '../lay/hands.ts';
import type { Thing } from '../lay/schema.ts';

const AXES = [
  ['+X', '-X'],
  ['+Y', '-Y'],
  ['up', 'down'],
] as const;
/** Of a unit direction: a part of it smaller than this is not worth a word; 0.35 is 20 degrees. */
const LEAST_PART = 0.35;

/** Where a direction points in the bay, in the words of its axes, the largest part first: `up`, `-Y and down`. */
export function directionWords(direction: readonly [number, number, number]): string {
  return direction
    .map((part, i) => ({ size: Math.abs(part), word: AXES[i]?.[part < 0 ? 1 : 0] ?? '' }))
    .filter(({ size }) => size >= LEAST_PART)
    .toSorted((a, b) => b.size - a.size)
    .map(({ word }) => word)
    .join(' and ');
}

/** What a wrench does at a nut, in a few words. */
export function swingWords({ swing, crowFoot }: NutHands): string {
  if (swing.goesOn) return `${Math.floor(swing.widestDeg)}°`;
  return crowFoot !== undefined && crowFoot.widestDeg > 0 ? `none; crow-foot ${crowFoot.widestDeg}°` : 'none';
}

/** Whether a second wrench can be held, in a few words. */
export function secondWords({ second }: NutHands): string {
  if (second === undefined) return '-';
  if (second.fits) return `room${second.assumed ? ', if it has a hex' : ''}`;
  return second.holdDeg === undefined ? 'no room' : 'hands meet';
}

/** The name of a thing in a list. */
export function thingName({ part, id }: Thing): string {
  return part ?? id;
}
