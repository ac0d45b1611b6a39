import { bad, good, type Result } from '../base/result.ts';
import { partOf, type Watch } from '../base/watch.ts';
import type { LayReport } from '../document/lay/schema.ts';
import { layRuns } from '../solve/layRuns/layRuns.ts';
import type { JobInput } from './contract.ts';
import { bayIndex, bayMesh, bodiesOfBay, type JobMemory } from './jobMemory.ts';
import { measuredAnew } from './measureLays.ts';
import { readProject, unknownRuns } from './readProject.ts';
import { reportOf } from './reportOf.ts';

/** Lays the named runs, or all, among those that are kept as laid, and checks them all. */
export async function layRunsJob(
  input: JobInput<'layRuns'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<LayReport>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved } = read.value;
  const wanted = input.runs ?? resolved.runs.map((r) => r.run.id);
  const unknown = unknownRuns(wanted, read.value);
  if (unknown.length > 0) return bad(unknown);
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.1));
  const chosen = resolved.runs.filter((r) => wanted.includes(r.run.id));
  const known = new Set(resolved.runs.map((r) => r.run.id));
  const kept = (input.earlier?.lays ?? []).filter((l) => known.has(l.run) && !wanted.includes(l.run));
  const { mesh } = opened.value;
  const context = { project: resolved.project, bay };
  const crew = memory.crew?.inContext(context);
  const still = await layRuns(context, resolved, chosen, kept, partOf(watch, 0.1, 0.8), crew);
  const bodies = bodiesOfBay(read.value, mesh, memory, partOf(watch, 0.8, 0.85));
  const measured = await measuredAnew({ resolved, bay, bodies }, still, wanted, memory, partOf(watch, 0.85, 1));
  const lays = measured.map((lay) => {
    const inputHash = read.value.runHashes[lay.run];
    return wanted.includes(lay.run) && inputHash !== undefined ? { ...lay, inputHash } : lay;
  });
  return good(reportOf(read.value, lays, [...read.value.warnings, ...opened.value.warnings]));
}
