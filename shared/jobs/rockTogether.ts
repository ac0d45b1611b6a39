import type { Watch } from '../base/watch.ts';
import type { Lay } from '../document/lay/schema.ts';
import type { ResolvedProject } from '../document/project/resolve.ts';
import type { LayContext } from '../solve/layRun/layContext.ts';
import { shareWatch } from '../solve/layRuns/shareWatch.ts';
import type { BodyBay } from '../solve/rock/bodyBays.ts';
import { rockLays, rockPlan } from '../solve/rock/rockLays.ts';
import type { JobMemory } from './jobMemory.ts';

/** As `rockLays`, the extremes shared out to the crew where there is one. */
export async function rockTogether(
  context: LayContext,
  resolved: ResolvedProject,
  bodies: readonly BodyBay[],
  lays: readonly Lay[],
  { crew }: JobMemory,
  watch: Watch,
): Promise<Lay[]> {
  if (crew === undefined) return rockLays(resolved, bodies, lays, watch);
  const { tasks, told } = rockPlan(resolved, bodies, lays, watch);
  return told(await crew.inContext({ ...context, bodies }).rockEach(tasks, shareWatch(watch, tasks.length)));
}
