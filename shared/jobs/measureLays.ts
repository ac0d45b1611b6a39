import { partOf, type Watch } from '../base/watch.ts';
import type { Lay } from '../document/lay/schema.ts';
import type { ResolvedProject } from '../document/project/resolve.ts';
import { builtLays } from '../solve/asBuilt/builtLays.ts';
import type { BayIndex } from '../solve/bay/bayIndex.ts';
import type { BodyBay } from '../solve/rock/bodyBays.ts';
import { type RockMemory, rockAmong } from '../solve/rock/rockAmong.ts';
import { rockLays } from '../solve/rock/rockLays.ts';
import { taperLays } from '../solve/taper/taperLays.ts';
import { taperWell } from '../solve/taper/taperWell.ts';
import type { JobMemory } from './jobMemory.ts';
import { measuredAround } from './measuredAround.ts';
import { rockTogether } from './rockTogether.ts';

/** What lays are measured in once they lie still. */
export interface MeasuredIn {
  readonly resolved: ResolvedProject;
  readonly bay: BayIndex;
  /** the bay by the bodies that move */
  readonly bodies: readonly BodyBay[];
  /** where one run is measured again and again among the others: what is known of them */
  readonly rocked?: RockMemory;
}

/** Lays of which the wanted ones were laid anew: a taper thread may have them made longer; then built, rocked, looked round. */
export async function measuredAnew(
  { resolved, bay, bodies, rocked: known }: MeasuredIn,
  still: readonly Lay[],
  wanted: readonly string[],
  memory: JobMemory,
  watch: Watch,
): Promise<Lay[]> {
  const tapered = taperWell({ resolved, bay }, still, wanted, partOf(watch, 0, 0.35));
  const made = builtLays({ resolved, bay }, tapered, partOf(watch, 0.35, 0.55));
  const context = { project: resolved.project, bay };
  const part = partOf(watch, 0.55, 0.8);
  const [run] = wanted;
  const rocked =
    known !== undefined && run !== undefined && wanted.length === 1
      ? rockAmong(resolved, bodies, made, run, known, part)
      : await rockTogether(context, resolved, bodies, made, memory, part);
  return measuredAround({ resolved, bay, lays: rocked }, wanted, partOf(watch, 0.8, 1));
}

/** Lays of which one was laid again near where it lay: it keeps its length, and only it is told of anew. */
export function measuredNear(
  { resolved, bay, bodies, rocked: known }: MeasuredIn,
  still: readonly Lay[],
  run: string,
  watch: Watch,
): Lay[] {
  const part = partOf(watch, 0, 0.5);
  const rocked =
    known === undefined
      ? rockLays(resolved, bodies, still, part, run)
      : rockAmong(resolved, bodies, still, run, known, part, true);
  const tapered = taperLays({ resolved, bay }, rocked, partOf(watch, 0.5, 0.7), run);
  const made = builtLays({ resolved, bay }, tapered, partOf(watch, 0.7, 0.8), run);
  return measuredAround({ resolved, bay, lays: made }, [run], partOf(watch, 0.8, 1));
}
