import type { TurnChain } from './turnChain.ts';

/**
 * Planes a chain may bend in to begin with: at first `first`, from `switchAt` of its length on `second`; rad, 0 = the side the goal's
 * point lies on. Of 288 such starts, and helices, tried on 150 pairs of poses without a short-turn connection (0.5 to 10 radii
 * apart), these with their mirror images reached the shortest chain of all for every pair, each pair by several.
 */
const STARTS: readonly { first: number; second: number; switchAt: number; length: number }[] = [
  { first: 0, second: 0, switchAt: 1, length: 4.5 },
  { first: Math.PI / 4, second: 0, switchAt: 0.25, length: 6 },
  { first: -Math.PI / 4, second: 0, switchAt: 0.25, length: 6 },
  { first: Math.PI / 4, second: Math.PI / 2, switchAt: 0.75, length: 6 },
  { first: -Math.PI / 4, second: -Math.PI / 2, switchAt: 0.75, length: 6 },
  { first: Math.PI / 4, second: 0.75 * Math.PI, switchAt: 0.75, length: 6 },
  { first: -Math.PI / 4, second: -0.75 * Math.PI, switchAt: 0.75, length: 6 },
  { first: 0, second: Math.PI, switchAt: 0.25, length: 6 },
  { first: Math.PI / 2, second: Math.PI, switchAt: 0.75, length: 6 },
  { first: -Math.PI / 2, second: -Math.PI, switchAt: 0.75, length: 6 },
];
/** Curvature of a start: a little under the most, so that its first steps can go both ways. */
const BEND = 0.95;
/** Radii by which a start is longer than its goal is away, at least. */
const SPARE = 2;

/** Chains to start from, of so many arcs, for a goal `away` radii off whose point lies towards the first square direction. */
export function chainStarts(arcs: number, away: number): TurnChain[] {
  const shares = new Float64Array(arcs).fill(1 / arcs);
  return STARTS.map(({ first, second, switchAt, length }) => {
    const bends = new Float64Array(2 * arcs);
    for (let i = 0; i < arcs; i++) {
      const plane = (i + 0.5) / arcs < switchAt ? first : second;
      bends[2 * i] = BEND * Math.cos(plane);
      bends[2 * i + 1] = BEND * Math.sin(plane);
    }
    return { bends, shares, length: Math.max(length, away + SPARE) };
  });
}
