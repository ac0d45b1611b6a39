import type { JobInput, JobName, JobOutput } from '../../shared/jobs/contract.ts';
import type { JobHost } from '../../shared/jobs/hostJobs.ts';
import { threadJobHost } from '../node/threadJobHost.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';

/** Either what the job answered, or the exit code with which the command ends. */
export type WatchedEnd<N extends JobName> =
  | { readonly ok: true; readonly output: JobOutput<N> }
  | { readonly ok: false; readonly exit: ExitCode };

/** Does one job in a thread, or the next one in a thread that is handed over and left open. Ctrl-C asks it to stop, a second Ctrl-C stops it; progress is one line on a terminal. */
export async function watchedJob<N extends JobName>(
  host: CommandHost,
  name: N,
  input: JobInput<N>,
  thread?: JobHost,
): Promise<WatchedEnd<N>> {
  const jobs = thread ?? threadJobHost(host.folders.jobWorkerFile);
  const running = jobs.start(name, input, ({ fraction, doing }) => {
    if (host.progressLine) host.err(`\r\u001b[K${Math.round(fraction * 100)} % ${doing}`);
  });
  const listenNoMore = host.onInterrupt(() => running.cancel());
  const end = await running.end;
  listenNoMore();
  if (thread === undefined) jobs.close();
  if (host.progressLine) host.err('\r\u001b[K');
  switch (end.kind) {
    case 'done':
      return { ok: true, output: end.output };
    case 'bad-input':
      return { ok: false, exit: reportProblems(host, end.problems) };
    case 'cancelled':
      host.err('stopped; nothing was written\n');
      return { ok: false, exit: EXIT.cancelled };
    case 'failed':
      host.err(`hosewright: a fault of the program itself: ${end.message}\n`);
      return { ok: false, exit: EXIT.ownFault };
  }
}
