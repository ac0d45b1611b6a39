import type { JobEnd, JobInput, JobName } from '../../shared/jobs/contract.ts';
import type { DoJob } from '../../shared/jobs/serveJobs.ts';

/**
 * Jobs that do nothing useful but everything the protocol can see. The project's text says which: `count` reports
 * progress and answers numbers from the file's bytes, `wait` stops only when cancelled, `throw` throws, `wrong` is bad
 * input, `exit` ends its thread, `deaf` never looks at its cancel flag.
 */
export const fakeJobs: DoJob = async <N extends JobName>(_name: N, input: JobInput<N>, watch: Parameters<DoJob>[2]) => {
  const { projectText, files } = input as JobInput<'openProject'>;
  switch (projectText) {
    case 'wait':
      while (!watch.isCancelled()) {
        watch.report({ fraction: 0.5, doing: 'waiting' });
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      return { kind: 'cancelled' };
    case 'deaf':
      watch.report({ fraction: 0.5, doing: 'not listening' });
      return new Promise<never>(() => undefined);
    case 'throw':
      throw new Error('fakeJobs: thrown on purpose');
    case 'exit':
      process.exit(3);
      break;
    case 'wrong':
      return { kind: 'bad-input', problems: [{ path: 'runs[0]', message: 'expected a run', got: '"x"' }] };
  }
  watch.report({ fraction: 0, doing: 'counting' });
  const bytes = files[0]?.bytes ?? new Uint8Array();
  const bay = { positions: Float32Array.from(bytes, (b) => b / 3), indices: Uint32Array.from(bytes), parts: [] };
  return { kind: 'done', output: { bay, warnings: [] } } as unknown as JobEnd<N>;
};
