import { bad, type Result } from '../base/result.ts';
import type { Watch } from '../base/watch.ts';
import type { JobInput, JobOutput } from './contract.ts';
import type { JobMemory } from './jobMemory.ts';

const UNKNOWN_HAND = { path: 'hand', message: 'this worker holds no such run: take the run again' };

/** The job `takeRun`. */
export async function takeRunJob(
  _input: JobInput<'takeRun'>,
  _watch: Watch,
  _memory: JobMemory,
): Promise<Result<JobOutput<'takeRun'>>> {
  return bad([UNKNOWN_HAND]);
}

/** The job `moveRun`. */
export async function moveRunJob(
  _input: JobInput<'moveRun'>,
  _watch: Watch,
  _memory: JobMemory,
): Promise<Result<JobOutput<'moveRun'>>> {
  return bad([UNKNOWN_HAND]);
}

/** The job `relayRun`. */
export async function relayRunJob(
  _input: JobInput<'relayRun'>,
  _watch: Watch,
  _memory: JobMemory,
): Promise<Result<JobOutput<'relayRun'>>> {
  return bad([UNKNOWN_HAND]);
}
