import { createStore } from 'zustand/vanilla';
import { describeProblem, type Problem } from '../../shared/base/result.ts';
import type { LainHose, Progress } from '../../shared/base/watch.ts';
import type { JobInput, JobName, JobOutput } from '../../shared/jobs/contract.ts';
import type { JobHost } from '../../shared/jobs/hostJobs.ts';
import { SAFE_WORDS } from './safeWords.ts';

/** What the bench has to say about work that did not go through. */
export interface Notice {
  readonly title: string;
  readonly lines: readonly string[];
  readonly kind: 'problem' | 'done';
}

export interface JobsState {
  readonly current: { readonly title: string; readonly progress: Progress; readonly cancelling: boolean } | null;
  readonly notice: Notice | null;
  /** hoses that the work has found so far, by run: shown while it goes on, and never kept */
  readonly lain: Readonly<Record<string, LainHose>>;
}

const NONE_LAIN: JobsState['lain'] = {};

const JUST_STARTED: Progress = { fraction: 0, doing: 'starting' };

/** One job at a time: the machine has one bench. A second is refused while the first runs. */
export function createJobsStore(host: Pick<JobHost, 'start'>) {
  const store = createStore<JobsState>(() => ({ current: null, notice: null, lain: NONE_LAIN }));
  let cancelCurrent: (() => void) | null = null;
  let quiet = false;

  const tell = (title: string, lines: readonly string[], kind: Notice['kind'] = 'problem'): void =>
    store.setState({ notice: { title, lines, kind } });

  /** What went wrong, and last what is safe and what to do. */
  const tellProblems = (title: string, problems: readonly Problem[], safe: string): void =>
    tell(title, [...problems.map(describeProblem), safe]);

  /** Runs a job to its end; null when there is no output, and then the notice says why. */
  const work = async <N extends JobName>(title: string, name: N, input: JobInput<N>): Promise<JobOutput<N> | null> => {
    if (store.getState().current !== null) return null;
    quiet = false;
    store.setState({ current: { title, progress: JUST_STARTED, cancelling: false }, notice: null });
    try {
      const job = host.start(name, input, (progress) =>
        store.setState(({ current, lain }) => ({
          ...(current === null ? {} : { current: { ...current, progress } }),
          // What a trial lays is compared, not shown.
          ...(name === 'layRuns' && progress.lain && { lain: { ...lain, [progress.lain.run]: progress.lain } }),
        })),
      );
      cancelCurrent = job.cancel;
      const end = await job.end;
      if (end.kind === 'done') return end.output;
      if (end.kind === 'cancelled' && quiet) return null;
      if (end.kind === 'cancelled') tell(`${title}: stopped`, ['Nothing on the bench was changed.'], 'done');
      else if (end.kind === 'bad-input') tellProblems(`${title}: not done`, end.problems, SAFE_WORDS.unchanged);
      else
        tell(`${title}: broke off by our own mistake`, [end.message, 'The project is unchanged; you can try again.']);
      return null;
    } catch (error) {
      tell(`${title}: broke off by our own mistake`, [error instanceof Error ? error.message : String(error)]);
      return null;
    } finally {
      cancelCurrent = null;
      store.setState({ current: null, lain: NONE_LAIN });
    }
  };

  const cancel = (): void => {
    store.setState(({ current }) => (current === null ? {} : { current: { ...current, cancelling: true } }));
    cancelCurrent?.();
  };

  return {
    ...store,
    work,
    tell,
    tellProblems,
    dismiss: (): void => store.setState({ notice: null }),
    /** Stops the work because something newer makes it needless: nothing is said of it. False when it is being stopped already. */
    cancelQuietly: (): boolean => {
      if (store.getState().current?.cancelling !== false) return false;
      quiet = true;
      cancel();
      return true;
    },
    cancel,
  };
}

export type JobsStore = ReturnType<typeof createJobsStore>;
