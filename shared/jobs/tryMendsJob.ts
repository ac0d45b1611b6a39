import { bad, good, type Result } from '../base/result.ts';
import { partOf, type Watch } from '../base/watch.ts';
import { parseProject } from '../document/project/parseProject.ts';
import type { ResolvedProject } from '../document/project/resolve.ts';
import { withRelaid } from '../solve/handLay/relayNear.ts';
import type { LayContext } from '../solve/layRun/layContext.ts';
import { tubesAmong } from '../solve/layRun/tubesOf.ts';
import { layRuns } from '../solve/layRuns/layRuns.ts';
import { crewOfOne, type LayCrew, type LayTask } from '../solve/layRuns/layTask.ts';
import { tryMends } from '../solve/mends/tryMends.ts';
import type { RockMemory } from '../solve/rock/rockAmong.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayIndex, bayMesh, bodiesOfBay, type JobMemory } from './jobMemory.ts';
import { measuredAnew, measuredNear } from './measureLays.ts';
import { readProject, runHashesOf, unknownRuns } from './readProject.ts';
import { withFlow } from './reportOf.ts';

/** The job `tryMends`: what would mend the findings of one run, tried by laying it so among the others as they lie. */
export async function tryMendsJob(
  input: JobInput<'tryMends'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'tryMends'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const written = parseProject(input.projectText);
  if (!written.ok) return written;
  const { resolved, tables, inputHash, runHashes, meshes, today } = read.value;
  const run = resolved.runs.find((r) => r.run.id === input.run);
  if (run === undefined) return bad(unknownRuns([input.run], read.value));
  const own = input.report.lays.find((l) => l.run === input.run);
  if (own === undefined)
    return bad([{ path: 'run', message: 'this run is not laid yet: lay it first', got: input.run }]);
  if (own.inputHash !== undefined && own.inputHash !== runHashes[input.run])
    return bad([
      { path: 'run', message: 'the project has changed since this run was laid: lay it again first', got: input.run },
    ]);
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.1));
  const bodies = bodiesOfBay(read.value, opened.value.mesh, memory, partOf(watch, 0.1, 0.15));
  const known = new Set(resolved.runs.map((r) => r.run.id));
  const lays = input.report.lays.filter((l) => known.has(l.run));
  const line = own.centreline.points;
  const laid = new Map(lays.map((l) => [l.run, l]));
  const rocked: RockMemory = {};
  const context = { project: resolved.project, bay };
  const contextOf = (mended: ResolvedProject): LayContext => ({ project: mended.project, bay });
  const crewIn = (within: LayContext): LayCrew => memory.crew?.inContext(within) ?? crewOfOne(within);
  const found = await tryMends(
    {
      written: written.value,
      resolved,
      tables,
      lays,
      ...(today === undefined ? {} : { today }),
      others: tubesAmong(resolved, laid, input.run),
      crew: crewIn(context),
      layNear: async (mended, one, part) => {
        const [within, others] = [contextOf(mended), tubesAmong(mended, laid, input.run)];
        const task: LayTask = { how: 'near', run: one, others, near: { line, before: own } };
        const [done] = await crewIn(within).doEach([task], () => part);
        return done?.lay === undefined ? [] : withRelaid(within, mended, one, lays, done.lay);
      },
      layAnew: (mended, one, part) =>
        layRuns(
          contextOf(mended),
          mended,
          [one],
          lays.filter((l) => l.run !== input.run),
          part,
          crewIn(contextOf(mended)),
        ),
      measure: async (mended, how, still, id, part) => {
        const within = { resolved: mended, bay, bodies, rocked };
        const measured =
          how === 'near'
            ? measuredNear(within, still, id, part)
            : await measuredAnew(within, still, [id], memory, part);
        const hash = runHashesOf(mended, meshes)[id];
        return measured.map((lay) =>
          lay.run === id && hash !== undefined ? withFlow(mended, { ...lay, inputHash: hash }) : lay,
        );
      },
    },
    run,
    input.checks,
    partOf(watch, 0.15, 1),
  );
  return good({
    format: 'hosewright-mends',
    version: 1,
    run: input.run,
    inputHash,
    aimedAt: [...found.aimedAt],
    tried: found.tried,
    ...(found.nearest.length === 0 ? {} : { nearest: [...found.nearest] }),
    answers: [...found.answers],
  });
}
