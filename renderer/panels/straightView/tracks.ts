import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import { heightTrack, radiusTrack, type TrackPoint } from '../../state/layPlaces.ts';

/** Share of the limit at which a track's picture ends: beyond twice the limit nobody reads it. */
const MOST_SHARE = 2;

/**
 * How hard the hose is bent along its length, as limit over radius: 0 is straight, 1 is at the limit, above is forbidden.
 * A radius itself would run off to infinity on every straight stretch.
 */
export function bendShares(lay: Lay): readonly TrackPoint[] {
  const { profile } = lay;
  const radii =
    profile === undefined
      ? radiusTrack(lay.centreline)
      : profile.arcLengthMm.map((arcLengthMm, i) => ({ arcLengthMm, value: profile.radiusMm[i] as number }));
  return radii.map(({ arcLengthMm, value }) => ({
    arcLengthMm,
    value: Math.min(MOST_SHARE, lay.minRadius.limitMm / value),
  }));
}

/** The tightest neighbour at one place of the hose. */
export interface NearPlace extends TrackPoint {
  /** clearance over what is asked there, at most `MOST_SHARE`; 1 = just enough */
  readonly value: number;
  readonly clearanceMm: number;
  /** false = nothing within the profile's reach */
  readonly within: boolean;
  readonly to: Clearance['to'];
}

/** Along the hose, the neighbour that leaves least of what is asked from it. Empty for a lay without a profile. */
export function nearPlaces({ profile }: Pick<Lay, 'profile'>): readonly NearPlace[] {
  if (profile === undefined) return [];
  return profile.arcLengthMm.flatMap((arcLengthMm, i) => {
    const here = profile.near.map(({ to, clearanceMm, askedMm, parts, part }) => {
      const [clearance, asked, name] = [clearanceMm[i] as number, askedMm[i] as number, parts[part[i] as number]];
      const share = asked > 0 ? clearance / asked : MOST_SHARE;
      const thing = to.kind === 'skin' && name !== undefined ? { ...to, part: name } : to;
      return {
        arcLengthMm,
        value: Math.min(MOST_SHARE, Math.max(0, share)),
        share,
        clearanceMm: clearance,
        within: name !== undefined,
        to: thing,
      };
    });
    const tightest = here.reduce<(typeof here)[number] | undefined>(
      (least, next) => (least === undefined || next.share < least.share ? next : least),
      undefined,
    );
    return tightest === undefined ? [] : [tightest];
  });
}

/** The neighbour at the profile's place nearest to an arc length; undefined without a profile or with nothing near. */
export function nearAt(places: readonly NearPlace[], arcLengthMm: number): NearPlace | undefined {
  let best: NearPlace | undefined;
  for (const place of places)
    if (best === undefined || Math.abs(place.arcLengthMm - arcLengthMm) < Math.abs(best.arcLengthMm - arcLengthMm))
      best = place;
  return best?.within === true ? best : undefined;
}

/** A thing near the hose, at its nearest place. */
export interface NearMark {
  readonly clearance: Clearance;
  /** clearance over what is asked for, at most `MOST_SHARE`; 1 = just enough */
  readonly share: number;
  /** row its name is written in; undefined = no room, the list beside the bay names it */
  readonly row: number | undefined;
  /** px at which its name begins */
  readonly nameFromPx: number;
}

/** Clearances beyond this many times what is asked for say nothing about the hose and stay off the track. */
const TELLING_SHARE = 4;

/**
 * The marks of a lay's clearances. Names are given room in order of tightness, so that what is tightest is named first and
 * no two names overlap.
 *
 * @param x px of a place; @param widthPx px a clearance's name needs; @param rightPx px where names have to end
 */
export function nearMarks(
  lay: Pick<Lay, 'clearances'>,
  x: (arcLengthMm: number) => number,
  widthPx: (clearance: Clearance) => number,
  rightPx: number,
  rows: number,
): readonly NearMark[] {
  const taken: { row: number; from: number; to: number }[] = [];
  const shareOf = (c: Clearance): number => (c.requiredMm > 0 ? c.provenAtLeastMm / c.requiredMm : TELLING_SHARE);
  return lay.clearances
    .filter((clearance) => shareOf(clearance) < TELLING_SHARE)
    .sort((p, q) => shareOf(p) - shareOf(q))
    .map((clearance) => {
      const width = widthPx(clearance);
      const from = Math.min(x(clearance.at.arcLengthMm) + NAME_GAP_PX, rightPx - width);
      const to = from + width;
      const row = Array.from({ length: rows }, (_, i) => i).find(
        (i) => !taken.some((t) => t.row === i && t.from < to + NAME_GAP_PX && from < t.to + NAME_GAP_PX),
      );
      if (row !== undefined) taken.push({ row, from, to });
      return { clearance, share: Math.min(MOST_SHARE, Math.max(0, shareOf(clearance))), row, nameFromPx: from };
    });
}

const NAME_GAP_PX = 8;

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
