import type { Result } from '../base/result.ts';
import { Cancelled, type Watch } from '../base/watch.ts';
import type { JobEnd, JobInput, JobName, JobOutput } from './contract.ts';
import type { JobMemory } from './jobMemory.ts';
import { openProjectJob } from './openProjectJob.ts';

export { type JobMemory, newJobMemory } from './jobMemory.ts';

type Job<N extends JobName> = (input: JobInput<N>, watch: Watch, memory: JobMemory) => Promise<Result<JobOutput<N>>>;

/** Every job, read when it is first asked for, so that a bay is on the screen before what lays hose in it is read. */
const JOBS: { [N in JobName]: () => Promise<Job<N>> } = {
  lookAtMeshes: () => import('./lookAtMeshesJob.ts').then((file) => file.lookAtMeshesJob),
  openProject: async () => openProjectJob,
  sweepParts: () => import('./sweepPartsJob.ts').then((file) => file.sweepPartsJob),
  layRuns: () => import('./layRunsJob.ts').then((file) => file.layRunsJob),
  endTrial: () => import('./endTrialJob.ts').then((file) => file.endTrialJob),
  waysRound: () => import('./waysRoundJob.ts').then((file) => file.waysRoundJob),
  tryMends: () => import('./tryMendsJob.ts').then((file) => file.tryMendsJob),
  takeRun: () => import('./handJobs.ts').then((file) => file.takeRunJob),
  moveRun: () => import('./handJobs.ts').then((file) => file.moveRunJob),
  relayRun: () => import('./handJobs.ts').then((file) => file.relayRunJob),
  builtHose: () => import('./builtHoseJob.ts').then((file) => file.builtHoseJob),
  straightenRod: () => import('./straightenRodJob.ts').then((file) => file.straightenRodJob),
  checkLays: () => import('./checkLaysJob.ts').then((file) => file.checkLaysJob),
  makeSheets: () => import('./makeSheetsJob.ts').then((file) => file.makeSheetsJob),
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
    const job = (await JOBS[name]()) as Job<N>;
    const result = await job(input, watch, memory);
    return result.ok ? { kind: 'done', output: result.value } : { kind: 'bad-input', problems: result.problems };
  } catch (error) {
    if (error instanceof Cancelled) return { kind: 'cancelled' };
    throw error;
  }
}

/** Reads what all jobs need, so that none has to wait for it. What cannot be read is told by the job that wants it. */
export async function readJobs(): Promise<void> {
  await Promise.allSettled(Object.values(JOBS).map((read) => read()));
}
