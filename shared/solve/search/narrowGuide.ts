import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import type { ThreadGuides } from './bentThread.ts';
import { type ClearSpace, marginUpTo } from './clearSpace.ts';
import { rememberedGrid } from './firstWays.ts';
import { BLOCKED, type CellJudge, CLEAR, DOUBTFUL, GoalDistance } from './goalDistance.ts';

/** A cell whose middle is short by up to this share of its edge may hold a place that is clear. */
const SHORT_CELLS = 0.5;
/** mm. Clear enough, when a clear place is looked for in a cell; how it is looked for. */
const FOUND_SHORT_MM = 1;
const AIMED_MM = 0.7;
const SLOPE_STEP_MM = 0.3;
const LEAST_SLOPE = 0.2;
const CLIMBS = 3;

/** How a guide through narrow places tells what its cells hold: by their middles, or by looking for a clear place in each. */
export interface NarrowGuides {
  readonly cellMm: number;
  readonly looksForPlaces: boolean;
}

/**
 * Guides to both ends through all that is hardly wider than a hose, over the same cells. Unlike the guide of a
 * lattice they see thin walls as shut and the holes in them as open; an infinite distance proves nothing.
 */
export function narrowGuides(
  space: ClearSpace,
  { cellMm, looksForPlaces }: NarrowGuides,
  starts: readonly Pose[],
  goals: readonly Pose[],
): ThreadGuides {
  const { grid, states } = rememberedGrid(space, cellMm, looksForPlaces ? 'by their best' : 'by their middles');
  const judge: CellJudge = looksForPlaces ? judgedByItsBest : judgedByItsMiddle;
  const guideTo = (ends: readonly Pose[]): GoalDistance =>
    new GoalDistance(
      space,
      grid,
      states,
      ends.map(({ point }) => point),
      { judge, allRound: true },
    );
  return { toGoals: guideTo(goals), toStarts: guideTo(starts) };
}

function judgedByItsMiddle(space: ClearSpace, cellMm: number, x: number, y: number, z: number): number {
  const margin = marginUpTo(space, x, y, z, 0);
  return margin >= 0 ? CLEAR : margin >= -SHORT_CELLS * cellMm ? DOUBTFUL : BLOCKED;
}

/** Climbs the margin from the middle of the cell, as far as its corners are. */
function judgedByItsBest(space: ClearSpace, cellMm: number, x: number, y: number, z: number): number {
  let place: Vec3 = [x, y, z];
  let margin = marginUpTo(space, x, y, z, 0);
  if (margin >= 0) return CLEAR;
  let leftMm = (cellMm * Math.sqrt(3)) / 2;
  for (let climb = 0; climb < CLIMBS && margin >= -leftMm - FOUND_SHORT_MM; climb++) {
    const higher = climbed(space, place, margin, leftMm);
    if (higher === undefined) break;
    ({ place, margin } = higher);
    if (margin >= -FOUND_SHORT_MM) return DOUBTFUL;
    leftMm -= higher.stepMm;
  }
  return margin >= -FOUND_SHORT_MM ? DOUBTFUL : BLOCKED;
}

interface Higher {
  readonly place: Vec3;
  readonly margin: number;
  readonly stepMm: number;
}

/** A step up the slope of the margin, half of it where the whole one goes too far; undefined on a ridge. */
function climbed(space: ClearSpace, [x, y, z]: Vec3, margin: number, mostMm: number): Higher | undefined {
  const s = SLOPE_STEP_MM;
  const slope = (a: number, b: number, c: number): number =>
    (marginUpTo(space, x + a, y + b, z + c, AIMED_MM) - margin) / s;
  const [gx, gy, gz] = [slope(s, 0, 0), slope(0, s, 0), slope(0, 0, s)];
  const steepness = lengthOf(gx, gy, gz);
  if (steepness < LEAST_SLOPE) return undefined;
  const whole = Math.min(mostMm, (AIMED_MM - margin) / steepness);
  for (const stepMm of [whole, whole / 2]) {
    const t = stepMm / steepness;
    const place: Vec3 = [x + t * gx, y + t * gy, z + t * gz];
    const there = marginUpTo(space, ...place, AIMED_MM);
    if (there > margin) return { place, margin: there, stepMm };
  }
  return undefined;
}
