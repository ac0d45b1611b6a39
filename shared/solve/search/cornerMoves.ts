import { lastAsked } from '../../base/lastAsked.ts';
import { ROUNDING_MM } from '../../base/tolerances.ts';
import { angleBetween, length, rejectFrom, unit, type Vec3 } from '../../base/vec3.ts';
import type { PathSegment } from '../../geometry/arcLinePath.ts';

/** The 26 directions from a grid node to its neighbours, in steps of the grid. */
export const HEADING_STEPS: readonly Vec3[] = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z): Vec3 => [x, y, z])))
  .filter((v) => v.some((c) => c !== 0));
/** The same as unit vectors. */
export const HEADINGS: readonly Vec3[] = HEADING_STEPS.map(unit);

/**
 * Cell of the grid over the least radius. At this ratio the rounding of a corner between neighbouring headings needs one or
 * two whole steps on either side with little left over (35.3 degrees: 1, 45 degrees: 2, 60 degrees: 2).
 */
export const CORNER_CELL_RADII = 0.2255;

/** rad. Sharper corners are made of two. */
const MOST_TURN_RAD = 1.06;

/** A straight, or a rounded corner with its two straights, from one node of the grid to another. */
export interface CornerMove {
  readonly toHeading: number;
  /** from node to node, in steps of the grid */
  readonly step: Vec3;
  readonly lengthMm: number;
  readonly segments: readonly PathSegment[];
}

type Moves = readonly (readonly CornerMove[])[];

/** Those asked for last, by radius and cell: hoses of a few kinds are searched for over and over. */
const known = new Map<string, Moves>();
const MOST_KNOWN = 16;

/** The moves from each heading on a grid of `cellMm`, every corner rounded at `radiusMm`. Exact: a move ends on a node, in a heading. */
export function cornerMoves(radiusMm: number, cellMm: number): Moves {
  return lastAsked(known, `${radiusMm} ${cellMm}`, MOST_KNOWN, () => movesOf(radiusMm, cellMm));
}

function movesOf(radiusMm: number, cellMm: number): Moves {
  return HEADINGS.map((from, f) =>
    HEADINGS.flatMap((to, t) => {
      if (t === f) return [straightMove(f, cellMm)];
      const turn = angleBetween(from, to);
      return turn > MOST_TURN_RAD ? [] : [turningMove(f, t, turn, radiusMm, cellMm)];
    }),
  );
}

function straightMove(heading: number, cellMm: number): CornerMove {
  const step = HEADING_STEPS[heading] as Vec3;
  const lengthMm = cellMm * length(step);
  return { toHeading: heading, step, lengthMm, segments: [{ kind: 'line', lengthMm }] };
}

function turningMove(from: number, to: number, turnRad: number, radiusMm: number, cellMm: number): CornerMove {
  const [before, after] = [HEADING_STEPS[from] as Vec3, HEADING_STEPS[to] as Vec3];
  const tangentMm = radiusMm * Math.tan(turnRad / 2);
  const stepsOf = (step: Vec3): number => Math.ceil((tangentMm - ROUNDING_MM) / (cellMm * length(step)));
  const [a, b] = [stepsOf(before), stepsOf(after)];
  const straights = [a * cellMm * length(before) - tangentMm, b * cellMm * length(after) - tangentMm] as const;
  const normal = unit(rejectFrom(HEADINGS[to] as Vec3, HEADINGS[from] as Vec3));
  const line = (lengthMm: number): PathSegment[] => (lengthMm > ROUNDING_MM ? [{ kind: 'line', lengthMm }] : []);
  return {
    toHeading: to,
    step: [a * before[0] + b * after[0], a * before[1] + b * after[1], a * before[2] + b * after[2]],
    lengthMm: straights[0] + radiusMm * turnRad + straights[1],
    segments: [...line(straights[0]), { kind: 'arc', radiusMm, angleRad: turnRad, normal }, ...line(straights[1])],
  };
}
