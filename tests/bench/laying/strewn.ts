import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../shared/solve/layRun/layRun.ts';
import { hasBay, openBay, type PlanningBay } from '../planningBays.ts';
import { strewnRuns } from '../strewnRuns.ts';
import { pushTimes, quantile, rows, timed } from './rows.ts';

interface LengthGrowth {
  readonly lengthMm: number;
  readonly medianMs: number;
  readonly allMs: number;
}

const GROWTH_RUNS = 48;

/** Strewn runs one by one, alone in the bay, index ready; the first is laid once before, to warm up. */
function measureRuns(bay: PlanningBay, count: number): number | undefined {
  if (!hasBay(bay)) return undefined;
  const index = openBay(bay);
  const { project, runs } = strewnRuns(openBay('bay-1e6'), 1, count);
  const alone = buildTubeField([]);
  const context = { project, bay: index };
  layRun(context, runs[0] as (typeof runs)[number], alone, UNWATCHED);
  let clean = 0;
  const times = runs.map((run) =>
    timed(() => {
      if (layRun(context, run, alone, UNWATCHED).outcome === 'laid') clean++;
    }),
  );
  const group = `${count} strewn runs, each alone, ${bay}`;
  pushTimes(group, times);
  rows.push([group, 'laid clean', clean, `of ${count}`]);
  return times.reduce((sum, ms) => sum + ms, 0);
}

/** The same runs in bays of more triangles. */
export function measureBayGrowth(): void {
  const totals = (['bay-1e5', 'bay-1e6', 'bay-5e6'] as const).map((bay) => measureRuns(bay, 24));
  const [small, middle, large] = totals;
  if (small && middle)
    rows.push(['growth', 'all 24 runs, 10 times the triangles (0.1 to 1 M)', middle / small, 'ratio']);
  if (middle && large) rows.push(['growth', 'all 24 runs, 5 times the triangles (1 to 5 M)', large / middle, 'ratio']);
}

/** The same hoses between ports so far apart, and twice as far, each alone. */
export function measureLengthGrowth(): void {
  if (!hasBay('bay-1e6')) return;
  const bay = openBay('bay-1e6');
  const alone = buildTubeField([]);
  const [once, twice] = [1, 2].map((times) => {
    const { project, runs } = strewnRuns(bay, 1, GROWTH_RUNS, [times * 300, times * 400]);
    const context = { project, bay };
    layRun(context, runs[0] as (typeof runs)[number], alone, UNWATCHED);
    const lays: Lay[] = [];
    const each = runs.map((run) => timed(() => lays.push(layRun(context, run, alone, UNWATCHED))));
    const group = `${GROWTH_RUNS} strewn runs with ports ${times * 300} to ${times * 400} mm apart, each alone, bay-1e6`;
    pushTimes(group, each);
    rows.push([group, 'laid clean', lays.filter(({ outcome }) => outcome === 'laid').length, `of ${GROWTH_RUNS}`]);
    const lengthMm = quantile(
      lays.map(({ cutLengthMm }) => cutLengthMm),
      0.5,
    );
    rows.push([group, 'cut length, median', lengthMm, 'mm']);
    return { lengthMm, medianMs: quantile(each, 0.5), allMs: each.reduce((sum, ms) => sum + ms, 0) };
  }) as [LengthGrowth, LengthGrowth];
  const named = (what: string, of: (growth: LengthGrowth) => number): void =>
    void rows.push([
      'growth',
      `ports twice as far apart: ${what}`,
      of(twice as LengthGrowth) / of(once as LengthGrowth),
      'ratio',
    ]);
  named('cut length, median', (g) => g.lengthMm);
  named('time, median', (g) => g.medianMs);
  named('time, all runs', (g) => g.allMs);
}
