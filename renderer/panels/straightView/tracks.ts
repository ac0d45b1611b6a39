import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import { heightTrack, radiusTrack, type TrackPoint } from '../../state/layPlaces.ts';

/** Share of the limit at which a track's picture ends: beyond twice the limit nobody reads it. */
const MOST_SHARE = 2;

/**
 * How hard the hose is bent along its length, as limit over radius: 0 is straight, 1 is at the limit, above is forbidden.
 * A radius itself would run off to infinity on every straight stretch.
 */
export function bendShares(lay: Lay): readonly TrackPoint[] {
  return radiusTrack(lay.centreline).map(({ arcLengthMm, value }) => ({
    arcLengthMm,
    value: Math.min(MOST_SHARE, lay.minRadius.limitMm / value),
  }));
}

/** A thing near the hose, at its nearest place, with the row its name is written in. */
export interface NearMark {
  readonly clearance: Clearance;
  /** clearance over what is asked for; 1 = just enough */
  readonly share: number;
  readonly row: number;
}

/** Where each mark stands and which of `rows` rows its name goes to, so that names next to each other do not overlap. */
export function nearMarks(
  lay: Lay,
  x: (arcMm: number) => number,
  namePx: (c: Clearance) => number,
  rows: number,
): readonly NearMark[] {
  const free = new Array<number>(rows).fill(Number.NEGATIVE_INFINITY);
  return [...lay.clearances]
    .sort((p, q) => p.at.arcLengthMm - q.at.arcLengthMm)
    .map((clearance) => {
      const from = x(clearance.at.arcLengthMm);
      const roomy = free.findIndex((end) => end <= from);
      const row = roomy >= 0 ? roomy : free.indexOf(Math.min(...free));
      free[row] = from + namePx(clearance);
      const share = clearance.requiredMm > 0 ? clearance.provenAtLeastMm / clearance.requiredMm : MOST_SHARE;
      return { clearance, share: Math.min(MOST_SHARE, Math.max(0, share)), row };
    });
}

/** A rise along a hose that has to fall: from a low point up to the next high one, along END A to END B. */
export interface FallPicture {
  readonly heights: readonly TrackPoint[];
  readonly riseMm: number;
  readonly words: string;
}

/** Rises and falls below this are the roundness of the hose itself, mm. */
const LEVEL_MM = 1;

/** The height along the hose and what it does in words: falls all the way, rises all the way, or goes over and under. */
export function fallPicture(lay: Lay): FallPicture {
  const heights = heightTrack(lay.centreline);
  let up = 0;
  let down = 0;
  heights.forEach((point, i) => {
    const step = point.value - (heights[i - 1]?.value ?? point.value);
    if (step > 0) up += step;
    else down -= step;
  });
  const riseMm = Math.max(0, ...heights.map((point) => point.value));
  if (up < LEVEL_MM && down < LEVEL_MM) return { heights, riseMm, words: 'level' };
  if (up < LEVEL_MM) return { heights, riseMm, words: 'falls all the way, A to B' };
  if (down < LEVEL_MM) return { heights, riseMm, words: 'falls all the way, B to A' };
  return { heights, riseMm, words: 'goes up and down' };
}
