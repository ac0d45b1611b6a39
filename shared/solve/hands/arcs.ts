import { wrapRadians } from '../../base/turnRange.ts';

/** Part of the round about a nut, rad, on from `from` with growing clock. `from` in [0, 2 pi), `width` in [0, 2 pi]. */
export interface Arc {
  readonly from: number;
  readonly width: number;
}

export const ROUND_RAD = 2 * Math.PI;
export const WHOLE_ROUND: Arc = { from: 0, width: ROUND_RAD };

/** What of the round no arc covers, by growing `from`; arcs that touch leave nothing between. Exact to rounding. */
export function uncovered(arcs: readonly Arc[]): Arc[] {
  if (arcs.length === 0) return [WHOLE_ROUND];
  const sorted = arcs.toSorted((a, b) => a.from - b.from);
  const start = (sorted[0] as Arc).from;
  const free: Arc[] = [];
  let covered = start;
  for (const { from, width } of sorted) {
    if (from > covered) free.push({ from: covered, width: from - covered });
    covered = Math.max(covered, from + width);
  }
  // The arcs that run on over the end of the round cover its beginning as well.
  const end = start + ROUND_RAD;
  const last = covered < end ? [{ from: covered, width: end - covered }] : [];
  const over = Math.max(0, covered - end);
  return [...free.flatMap((arc) => shortened(arc, start + over)), ...last]
    .map((arc) => ({ from: wrapRadians(arc.from), width: arc.width }))
    .toSorted((a, b) => a.from - b.from);
}

function shortened({ from, width }: Arc, until: number): Arc[] {
  if (from >= until) return [{ from, width }];
  return from + width > until ? [{ from: until, width: from + width - until }] : [];
}

/** How much of the round the arcs cover together, rad. */
export function coveredRad(arcs: readonly Arc[]): number {
  return ROUND_RAD - uncovered(arcs).reduce((sum, { width }) => sum + width, 0);
}

/** How far on from an arc's beginning a clock lies, rad, or undefined where it is not in the arc. */
export function placeInArc(arc: Arc, clockRad: number): number | undefined {
  const on = wrapRadians(clockRad - arc.from);
  return on <= arc.width ? on : undefined;
}
