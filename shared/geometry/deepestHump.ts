/** A crest of a height profile: where it stands, and how deep it is. */
export interface Hump {
  /** number of the height at the crest */
  readonly at: number;
  /** the lesser of the falls to its two sides, each counted until the profile comes higher than the crest or ends; same unit as the heights */
  readonly depth: number;
}

/**
 * The hump of a profile of heights that holds most: a place inside from which it goes down both ways. The first of several
 * alike. Nothing where the profile falls and then rises, or does only one of the two: then nothing can be held in it.
 * Method: each crest is looked at both ways; exact on the heights given. Cost grows with the square of the crests only
 * in profiles made for it.
 */
export function deepestHump(heights: readonly number[]): Hump | undefined {
  let deepest: Hump | undefined;
  for (let at = 1; at < heights.length - 1; at++) {
    const here = heights[at] as number;
    if ((heights[at - 1] as number) > here || (heights[at + 1] as number) > here) continue;
    const depth = Math.min(fallAway(heights, at, -1), fallAway(heights, at, 1));
    if (depth > (deepest?.depth ?? 0)) deepest = { at, depth };
  }
  return deepest;
}

/** How far the profile falls from a crest, one way, before it comes higher than the crest or ends. */
function fallAway(heights: readonly number[], crest: number, step: 1 | -1): number {
  const top = heights[crest] as number;
  let lowest = top;
  for (let i = crest + step; i >= 0 && i < heights.length; i += step) {
    const here = heights[i] as number;
    if (here > top) break;
    lowest = Math.min(lowest, here);
  }
  return top - lowest;
}
