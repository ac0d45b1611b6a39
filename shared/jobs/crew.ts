import { Cancelled, type Progress, type Watch } from '../base/watch.ts';
import type { BayIndex } from '../solve/bay/bayIndex.ts';
import type { LayContext } from '../solve/layRun/layContext.ts';
import { crewOfOne, type LaidTask, type LayCrew, type LayTask } from '../solve/layRuns/layTask.ts';
import type { BodyBay } from '../solve/rock/bodyBays.ts';
import { doRockTask, type RockedRuns, type RockTask } from '../solve/rock/rockLays.ts';
import { bayBytes, inSharedMemory } from './sharedBay.ts';

/** To a worker that lays: first what it lays in, then one task at a time. The bay comes only when it is another one. */
export type ToLayWorker =
  | {
      readonly kind: 'context';
      readonly context: Omit<CrewContext, 'bay' | 'bodies'>;
      readonly bay?: BayIndex;
      readonly bodies?: readonly BodyBay[];
    }
  | { readonly kind: 'task'; readonly task: CrewTask; readonly cancelFlag?: SharedArrayBuffer };

/** What a crew works in. */
export interface CrewContext extends LayContext {
  /** the bay by the bodies that move, for rocking */
  readonly bodies?: readonly BodyBay[];
}

export type CrewTask = LayTask | RockTask;
export type CrewDone = LaidTask | RockedRuns;

/** From a worker that lays: how far it is, and one of the others to end each task. */
export type FromLayWorker =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'done'; readonly done: CrewDone }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string };

/** A worker that lays, as the crew sees it. */
export interface LayWorkerHandle {
  post(message: ToLayWorker): void;
  terminate(): void;
}

/** Starts a worker. `receive` is given what it posts; `broke` is called when it dies of its own. */
export type StartLayWorker = (receive: (m: FromLayWorker) => void, broke: (message: string) => void) => LayWorkerHandle;

/** Workers that lay hoses for the worker that does a job, which waits for them. It is their parent: they end with it. */
export interface Crew {
  /** Who lays in this context, and rocks what is laid. */
  inContext(context: CrewContext): LayCrew & RockCrew;
  /** A bay as the workers can have it without a copy of their own, where memory can be shared. */
  share(bay: BayIndex): BayIndex;
  /** Ends the workers; what is asked and not done yet fails. */
  close(): void;
}

/** As a `LayCrew`, for the extremes of a rocking bay. */
export interface RockCrew {
  rockEach(tasks: readonly RockTask[], watchOf: (i: number) => Watch): Promise<readonly RockedRuns[]>;
}

export interface CrewOptions {
  readonly start: StartLayWorker;
  /** how many workers at most */
  readonly most: number;
  readonly canShareMemory: boolean;
}

/** More workers than this find less and less to do at once among the runs of one bay. */
export const MOST_WORKERS = 4;

/** Bytes. Where every worker has its own copy of the bay, so much is spent on copies at most. */
const MOST_COPIES = 1 << 30;

interface Waiting {
  readonly context: CrewContext;
  readonly task: CrewTask;
  /** made when the task is begun */
  readonly newWatch: () => Watch;
  readonly isIdleWork: boolean;
  readonly resolve: (done: CrewDone) => void;
  readonly reject: (error: Error) => void;
}

interface Doing extends Waiting {
  readonly watch: Watch;
}

interface Member {
  readonly handle: LayWorkerHandle;
  context?: CrewContext;
  doing?: Doing;
}

/**
 * A crew of so many workers, started when there is first more than one task to do at once, and kept for the next job. Tasks
 * are done in the order asked by whoever is idle. A lone task before that is done here. When a worker dies or fails, all
 * that was asked fails with its words, and the next tasks get new workers.
 */
export function openCrew({ start, most, canShareMemory }: CrewOptions): Crew {
  let members: Member[] = [];
  let queue: Waiting[] = [];

  function breakOff(message: string): void {
    const error = new Error(`a worker that lays hoses broke off: ${message}`);
    const asked = [...members.flatMap(({ doing }) => doing ?? []), ...queue];
    for (const { handle } of members) handle.terminate();
    members = [];
    queue = [];
    for (const { reject } of asked) reject(error);
  }

  function newMember(): Member {
    const member: Member = {
      handle: start(
        (message) => {
          if (members.includes(member)) hear(member, message);
        },
        (message) => {
          if (members.includes(member)) breakOff(message);
        },
      ),
    };
    return member;
  }

  function hear(member: Member, message: FromLayWorker): void {
    const { doing } = member;
    if (doing === undefined) return;
    if (message.kind === 'progress') doing.watch.report(message.progress);
    else if (message.kind === 'failed') breakOff(message.message);
    else {
      delete member.doing;
      if (message.kind === 'done') doing.resolve(message.done);
      else doing.reject(new Cancelled());
      send();
    }
  }

  function send(): void {
    for (const member of members) {
      if (member.doing !== undefined) continue;
      const next = firstToDo();
      if (next === undefined) return;
      give(member, next);
    }
  }

  function firstToDo(): Doing | undefined {
    for (;;) {
      const urgent = queue.findIndex((waiting) => !waiting.isIdleWork);
      const [next] = queue.splice(Math.max(0, urgent), 1);
      if (next === undefined) return undefined;
      const watch = next.newWatch();
      if (!watch.isCancelled()) return { ...next, watch };
      next.reject(new Cancelled());
    }
  }

  function give(member: Member, next: Doing): void {
    const { bay, bodies, ...context } = next.context;
    if (member.context !== next.context)
      member.handle.post({
        kind: 'context',
        context,
        ...(member.context?.bay === bay ? {} : { bay }),
        ...(bodies === undefined || member.context?.bodies === bodies ? {} : { bodies }),
      });
    member.context = next.context;
    member.doing = next;
    const { cancelFlag } = next.watch;
    member.handle.post({ kind: 'task', task: next.task, ...(cancelFlag === undefined ? {} : { cancelFlag }) });
  }

  function workersFor({ bay, bodies = [] }: CrewContext): number {
    if (canShareMemory) return most;
    const bytes = [bay, ...bodies.map((body) => body.bay)].reduce((sum, one) => sum + bayBytes(one), 0);
    return Math.min(most, Math.floor(MOST_COPIES / bytes));
  }

  /** Undefined where it is not worth a crew: whoever asks does it. */
  function askEach<Done extends CrewDone>(
    context: CrewContext,
    tasks: readonly CrewTask[],
    watchOf: (i: number) => Watch,
    isIdleWork: boolean,
  ): Promise<Done[]> | undefined {
    const count = workersFor(context);
    if (count < 2 || (tasks.length < 2 && members.length === 0)) return undefined;
    while (members.length < Math.min(count, tasks.length)) members.push(newMember());
    const all = tasks.map(
      (task, i) =>
        new Promise<Done>((done, reject) => {
          // A task is answered in kind.
          const resolve = done as (answer: CrewDone) => void;
          queue.push({ context, task, newWatch: () => watchOf(i), isIdleWork, resolve, reject });
        }),
    );
    send();
    return Promise.all(all);
  }

  return {
    close: () => breakOff('the crew was sent home'),
    share: (bay) => (canShareMemory ? inSharedMemory(bay) : bay),
    inContext: (context) => ({
      doEach: async (tasks, watchOf, isIdleWork = false) =>
        askEach<LaidTask>(context, tasks, watchOf, isIdleWork) ?? crewOfOne(context).doEach(tasks, watchOf),
      rockEach: async (tasks, watchOf) =>
        askEach<RockedRuns>(context, tasks, watchOf, false) ??
        tasks.map((task, i) => doRockTask(context.project, context.bodies ?? [], task, watchOf(i))),
    }),
  };
}
