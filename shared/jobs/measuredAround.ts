import { stopIfCancelled, type Watch } from '../base/watch.ts';
import type { Lay } from '../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../document/project/resolve.ts';
import type { BayIndex } from '../solve/bay/bayIndex.ts';
import { handsOf } from '../solve/hands/handsOf.ts';
import { heatOf } from '../solve/heat/heatOf.ts';

/** What is there to be measured against: the project, the bay, and all hoses where they lie. */
export interface Around {
  readonly resolved: ResolvedProject;
  readonly bay: BayIndex;
  readonly lays: readonly Lay[];
}

/** Adds to a lay what is measured of it in its surroundings; pure, and slow enough to be done once when the hoses lie. */
export type Measure = (around: Around, run: ResolvedRun, lay: Lay, watch: Watch) => Lay;

/** What is measured, in this order. A check reads it off the lay. */
const MEASURES: readonly Measure[] = [measureHeat, measureHands];

/**
 * The lays with what is measured of them once all hoses lie. Runs that are not `wanted` keep what was measured before;
 * a lay without a path is passed over.
 */
export function measuredAround(around: Around, wanted: readonly string[], watch: Watch): Lay[] {
  const { resolved, lays } = around;
  return lays.map((lay, i) => {
    stopIfCancelled(watch);
    const run = resolved.runs.find((r) => r.run.id === lay.run);
    if (run === undefined || !wanted.includes(lay.run) || lay.centreline.points.length < 2) return lay;
    watch.report({ fraction: i / lays.length, doing: `looking round ${run.run.name}` });
    return MEASURES.reduce((known, measure) => measure(around, run, known, watch), lay);
  });
}

/** The heat that the lay sees; what an earlier measure said of it goes. */
function measureHeat({ resolved, bay }: Around, run: ResolvedRun, { heat: _before, ...lay }: Lay, watch: Watch): Lay {
  const heat = heatOf(run, lay, bay, resolved.project.bay, watch);
  return heat === undefined ? lay : { ...lay, heat };
}

/** Room for wrenches at both nuts, the hoses that have to wait, and reach; what an earlier measure said of it goes. */
function measureHands(around: Around, run: ResolvedRun, { hands: _before, ...lay }: Lay, watch: Watch): Lay {
  return { ...lay, hands: handsOf(around, run, lay, watch) };
}
