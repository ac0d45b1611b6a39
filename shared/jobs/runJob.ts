import { bad, good, type Result } from '../base/result.ts';
import { Cancelled, partOf, type Watch } from '../base/watch.ts';
import type { LayReport } from '../document/lay/schema.ts';
import { bodyOfPart, skinOfPart } from '../document/project/skinOfPart.ts';
import { makeSheets } from '../sheets/index.ts';
import { layRuns } from '../solve/layRuns/layRuns.ts';
import { builtHoseJob } from './builtHoseJob.ts';
import type { JobEnd, JobInput, JobName, JobOutput } from './contract.ts';
import { endTrialJob } from './endTrialJob.ts';
import { moveRunJob, relayRunJob, takeRunJob } from './handJobs.ts';
import { bayIndex, bayMesh, bodiesOfBay, type JobMemory } from './jobMemory.ts';
import { lookAtMeshesJob } from './lookAtMeshesJob.ts';
import { measuredAnew } from './measureLays.ts';
import { readProject, unknownRuns } from './readProject.ts';
import { reportOf } from './reportOf.ts';
import { straightenRodJob } from './straightenRodJob.ts';
import { tryMendsJob } from './tryMendsJob.ts';
import { waysRoundJob } from './waysRoundJob.ts';

export { type JobMemory, newJobMemory } from './jobMemory.ts';

type Job<N extends JobName> = (input: JobInput<N>, watch: Watch, memory: JobMemory) => Promise<Result<JobOutput<N>>>;

const JOBS: { [N in JobName]: Job<N> } = {
  lookAtMeshes: lookAtMeshesJob,
  openProject,
  layRuns: layRunsJob,
  endTrial: endTrialJob,
  waysRound: waysRoundJob,
  tryMends: tryMendsJob,
  takeRun: takeRunJob,
  moveRun: moveRunJob,
  relayRun: relayRunJob,
  builtHose: builtHoseJob,
  straightenRod: straightenRodJob,
  checkLays,
  makeSheets: makeSheetsJob,
};

/**
 * Does one named job, the same on every host. Bad input and a cancel come back as ends; anything thrown beside is our
 * own mistake and is left to the host, which throws the worker away.
 */
export async function runJob<N extends JobName>(
  name: N,
  input: JobInput<N>,
  watch: Watch,
  memory: JobMemory,
): Promise<JobEnd<N>> {
  try {
    const result = await (JOBS[name] as Job<N>)(input, watch, memory);
    return result.ok ? { kind: 'done', output: result.value } : { kind: 'bad-input', problems: result.problems };
  } catch (error) {
    if (error instanceof Cancelled) return { kind: 'cancelled' };
    throw error;
  }
}

async function openProject(
  input: JobInput<'openProject'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'openProject'>>> {
  watch.report({ fraction: 0, doing: 'reading the project' });
  const read = readProject(input);
  if (!read.ok) return read;
  const { project } = read.value.resolved;
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const { mesh } = opened.value;
  return good({
    bay: {
      // Copies: the worker keeps its own.
      positions: mesh.positions.slice(),
      indices: mesh.indices.slice(),
      parts: mesh.parts.map((p) => ({
        ...p,
        skin: skinOfPart(project, p.name).id,
        body: bodyOfPart(project, p.name).id,
      })),
    },
    warnings: [...read.value.warnings, ...opened.value.warnings],
  });
}

async function layRunsJob(input: JobInput<'layRuns'>, watch: Watch, memory: JobMemory): Promise<Result<LayReport>> {
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

async function checkLays(input: JobInput<'checkLays'>): Promise<Result<LayReport>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const known = new Set(read.value.resolved.runs.map((r) => r.run.id));
  return good(
    reportOf(
      read.value,
      input.report.lays.filter((l) => known.has(l.run)),
      read.value.warnings,
    ),
  );
}

async function makeSheetsJob(input: JobInput<'makeSheets'>, watch: Watch): Promise<Result<JobOutput<'makeSheets'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const wanted = input.runs;
  const unknown = unknownRuns(wanted ?? [], read.value);
  if (unknown.length > 0) return bad(unknown);
  const { project, runs } = read.value.resolved;
  watch.report({ fraction: 0.2, doing: 'drawing the papers' });
  const { report, fonts, printedOn } = input;
  const files = await makeSheets(
    {
      project,
      report,
      runs,
      rolls: read.value.tables.rolls,
      fonts,
      printedOn,
      currentInputHash: read.value.inputHash,
      currentRunHashes: read.value.runHashes,
    },
    { runs: wanted, papers: input.papers },
  );
  return good({ files });
}
