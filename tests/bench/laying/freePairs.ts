import { readFileSync } from 'node:fs';
import { scale } from '../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { buildRunField } from '../../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../../shared/solve/bay/tubeField.ts';
import type { EndChoice } from '../../../shared/solve/search/problem.ts';
import { searchWays } from '../../../shared/solve/search/searchWays.ts';
import { posePairs } from '../../arbitraries/posePairs.ts';
import { emptyBay } from '../../arbitraries/rig.ts';
import { pushTimes, quantile, rows, timed } from './rows.ts';

interface FreePairs {
  readonly seed: number;
  /** least length known, in radii */
  readonly pairs: readonly { readonly length: number }[];
}

/** Made by tests/shared/geometry/freeShortest/reference.test.ts, with an oracle that shares no code with the search. */
const REFERENCE_FILE = 'tests/fixtures/freePairs/reference.json';
const FREE_RADIUS_MM = 75;

/** Ways between 200 pairs of poses with nothing between them, over the shortest known of curvature bounded as theirs. */
export function measureFreePairs(): void {
  const { seed, pairs } = JSON.parse(readFileSync(REFERENCE_FILE, 'utf8')) as FreePairs;
  const field = buildRunField(emptyBay(), buildTubeField([]), { skinMm: new Map(), tubeMm: 0, held: [] });
  const times: number[] = [];
  const ratios = posePairs(seed, pairs.length).map(({ from, to }, i) => {
    const [start, goal] = [from, to].map(
      ({ point, direction }) => ({ kind: 'held', pose: { point: scale(point, FREE_RADIUS_MM), direction } }) as const,
    ) as [EndChoice, EndChoice];
    const asked = {
      from: start,
      to: goal,
      minRadiusMm: FREE_RADIUS_MM,
      field,
      ways: 1,
      seed: 1,
      effort: 'normal',
    } as const;
    let lengthMm = Number.POSITIVE_INFINITY;
    times.push(timed(() => (lengthMm = searchWays(asked, UNWATCHED).ways[0]?.lengthMm ?? lengthMm)));
    return lengthMm / FREE_RADIUS_MM / (pairs[i] as FreePairs['pairs'][number]).length;
  });
  const group = `${pairs.length} pairs of poses 0.5 to 10 radii apart, nothing between them`;
  rows.push([group, 'length over the shortest known, median', quantile(ratios, 0.5), 'ratio']);
  rows.push([group, 'length over the shortest known, most', Math.max(...ratios), 'ratio']);
  rows.push([group, 'within 1.005', ratios.filter((ratio) => ratio <= 1.005).length, `of ${pairs.length}`]);
  pushTimes(group, times);
}
