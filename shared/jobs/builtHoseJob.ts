import { bad, good, type Result } from '../base/result.ts';
import { partOf, type Watch } from '../base/watch.ts';
import { builtLays } from '../solve/asBuilt/builtLays.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayIndex, bayMesh, type JobMemory } from './jobMemory.ts';
import { readProject, unknownRuns } from './readProject.ts';
import { reportOf } from './reportOf.ts';

/** The job `builtHose`: a laid run's hose as measured, laid again among the others as they lie. */
export async function builtHoseJob(
  input: JobInput<'builtHose'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'builtHose'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved } = read.value;
  const unknown = unknownRuns([input.run], read.value);
  if (unknown.length > 0) return bad(unknown);
  const lay = input.report.lays.find((l) => l.run === input.run);
  if (lay === undefined || lay.outcome !== 'laid')
    return bad([
      { path: 'run', message: 'this run has no clean lay to compare a hose with: lay it first', got: input.run },
    ]);
  if (lay.inputHash !== undefined && lay.inputHash !== read.value.runHashes[input.run])
    return bad([
      { path: 'run', message: 'the project has changed since this run was laid: lay it again first', got: input.run },
    ]);
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.6));
  const known = new Set(resolved.runs.map((r) => r.run.id));
  const lays = input.report.lays.filter((l) => known.has(l.run));
  const made = builtLays({ resolved, bay }, lays, partOf(watch, 0.6, 1), input.run);
  return good(reportOf(read.value, made, [...read.value.warnings, ...opened.value.warnings]));
}
