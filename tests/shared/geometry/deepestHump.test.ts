import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { deepestHump } from '../../../shared/geometry/deepestHump.ts';

/**
 * The slow way: pour air in. A place holds air where every way along the profile to either end dips below the level at
 * which the air would stand; the depth of a hump is the least dip, over both ways, that lets it out.
 */
function mostHeld(heights: readonly number[]): number {
  let most = 0;
  for (let i = 0; i < heights.length; i++)
    for (let l = 0; l < i; l++)
      for (let r = i + 1; r < heights.length; r++) {
        const inside = heights.slice(l, r + 1);
        // Only profiles whose highest place between l and r is i count as one hump.
        if (Math.max(...inside) === heights[i])
          most = Math.max(most, Math.min(heights[i]! - heights[l]!, heights[i]! - heights[r]!));
      }
  return most;
}

describe('the deepest hump of a profile', () => {
  it.each([
    ['climbs all the way', [0, 1, 2, 3], undefined],
    ['falls, then rises', [3, 1, 0, 2], undefined],
    ['level', [1, 1, 1], undefined],
    ['a crest of 20 to one side and 30 to the other', [0, 30, 10], { at: 1, depth: 20 }],
    ['a small crest on the way up', [0, 40, 25, 100], { at: 1, depth: 15 }],
    ['two crests: the deeper by its lesser side', [0, 10, 5, 50, 44], { at: 3, depth: 6 }],
    ['a flat top counts from where it begins', [0, 5, 5, 0], { at: 1, depth: 5 }],
    ['nothing', [], undefined],
  ] as const)('%s', (_, heights, hump) => {
    expect(deepestHump(heights)).toEqual(hump);
  });

  it('is what the slow way finds, on 300 seeded profiles, and the same read backwards', () => {
    const random = seededRandom(11);
    for (let n = 0; n < 300; n++) {
      const heights = Array.from({ length: 3 + Math.floor(random() * 8) }, () => Math.floor(random() * 12));
      expect(deepestHump(heights)?.depth ?? 0).toBe(mostHeld(heights));
      expect(deepestHump([...heights].reverse())?.depth ?? 0).toBe(mostHeld(heights));
    }
  });
});
