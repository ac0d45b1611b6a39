import { bad, good, type Result } from '../base/result.ts';
import { triple } from '../base/vec3.ts';
import { partOf, type Watch } from '../base/watch.ts';
import { runChecks } from '../solve/checks/index.ts';
import { tubesOf } from '../solve/layRun/tubesOf.ts';
import { apartFrom, waysRound } from '../solve/waysRound/waysRound.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayIndex, bayMesh, type JobMemory } from './jobMemory.ts';
import { readProject, unknownRuns } from './readProject.ts';

/** The job `waysRound`: one run on different sides of things, the other runs as the earlier report has them. */
export async function waysRoundJob(
  input: JobInput<'waysRound'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'waysRound'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved, inputHash, today } = read.value;
  const run = resolved.runs.find((r) => r.run.id === input.run);
  if (run === undefined) return bad(unknownRuns([input.run], read.value));
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.1));
  const laid = new Map((input.earlier?.lays ?? []).map((lay) => [lay.run, lay]));
  const context = { project: resolved.project, bay };
  const lays = waysRound(context, run, tubesOf(resolved, laid, input.run), partOf(watch, 0.1, 1));
  const ways = lays.map((lay) => {
    const apart = apartFrom(
      lay,
      lays.filter((other) => other !== lay),
    );
    const findings = runChecks(resolved, [lay], today);
    return { lay, findings, ...(apart === undefined ? {} : { waypoint: triple(apart) }) };
  });
  return good({ format: 'hosewright-ways-round', version: 1, run: input.run, inputHash, ways });
}
