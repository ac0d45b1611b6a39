import { bad, good, type Result } from '../base/result.ts';
import { partOf, type Watch } from '../base/watch.ts';
import type { Lay } from '../document/lay/schema.ts';
import type { ResolvedProject } from '../document/project/resolve.ts';
import { endTrial } from '../solve/endTrial/endTrial.ts';
import { tubesAmong } from '../solve/layRun/tubesOf.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayIndex, bayMesh, type JobMemory } from './jobMemory.ts';
import { measuredAround } from './measuredAround.ts';
import { readProject, unknownRuns } from './readProject.ts';

/** The job `endTrial`: one run with every pair of ends, the other runs as the earlier report has them. */
export async function endTrialJob(
  input: JobInput<'endTrial'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'endTrial'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved, tables, inputHash, today } = read.value;
  const run = resolved.runs.find((r) => r.run.id === input.run);
  if (run === undefined) return bad(unknownRuns([input.run], read.value));
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.1));
  const laid = new Map((input.earlier?.lays ?? []).map((lay) => [lay.run, lay]));
  const context = { project: resolved.project, bay };
  const others = tubesAmong(resolved, laid, input.run);
  const crew = memory.crew?.inContext(context);
  const neighbours = [...laid.values()].filter((lay) => lay.run !== input.run);
  const measure = (within: ResolvedProject, lay: Lay, part: Watch): Lay =>
    measuredAround({ resolved: within, bay, lays: [lay, ...neighbours] }, [input.run], part)[0] as Lay;
  const by = { crew, measure, today };
  const trial = await endTrial(context, resolved, run, tables.ends, others, partOf(watch, 0.1, 1), by);
  return good({
    format: 'hosewright-end-trial',
    version: 1,
    run: input.run,
    inputHash,
    ...trial,
    entries: [...trial.entries],
  });
}
