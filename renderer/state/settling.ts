import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import type { DocumentStore } from './documentStore.ts';
import type { HandStore } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import { createOwedRuns, isAsIn } from './owedRuns.ts';
import { layOf } from './runState.ts';

interface SettlingNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  readonly hand: HandStore;
}

/** ms without a further edit after which a run changed by numbers is laid again near where it lies. */
const REST_MS = 350;

/** Title of laying again near where the hose lies; other work is never stopped for it. */
const TITLE = 'Laying this run again near where it lies';

/** A settling: the run, and the project as it stood when it began. */
interface Settling {
  readonly run: string;
  readonly from: Project;
  /** stopped because something newer makes it needless: what is owed stays owed */
  isStopped: boolean;
}

/** Lays a run that was changed by hand again, near where it lies and by itself. */
export function createSettling({ document, jobs, hand }: SettlingNeeds) {
  let resting: ReturnType<typeof setTimeout> | undefined;
  let underWay: Settling | undefined;
  const owedRuns = createOwedRuns(document);

  const isUnderWay = (): boolean => jobs.getState().current?.title === TITLE;

  /** Lays a run again near where it lies, along the shape in the hand where there is one. Without a hose it does nothing. */
  const settle = async (run: string, along?: readonly Vec3[]): Promise<void> => {
    const { open } = document.getState();
    if (open === null || open.report === null || !hasHose(layOf(open, run))) return;
    clearTimeout(resting);
    // Other work is waited for; its end wakes what is owed.
    if (jobs.getState().current !== null) return;
    const from = open.history.present;
    const files = { projectText: serialiseProject(from), files: open.files.files };
    const input = { ...files, run, earlier: open.report, ...(along === undefined ? {} : { along }) };
    const mine: Settling = { run, from, isStopped: false };
    underWay = mine;
    const report = await jobs.work(TITLE, 'relayRun', input);
    if (report !== null) document.reported(report, from, [run]);
    else if (!mine.isStopped) owedRuns.forget(run, from);
  };

  /** Stops a settling under way without a word. */
  const stop = (): void => {
    if (isUnderWay() && jobs.cancelQuietly() && underWay !== undefined) underWay.isStopped = true;
  };

  /** Settles itself when no settling is under way any more. */
  const ended = (): Promise<void> =>
    new Promise((resolve) => {
      if (!isUnderWay()) return resolve();
      const leave = jobs.subscribe(({ current }) => {
        if (current !== null) return;
        leave();
        resolve();
      });
    });

  /** The first run that is owed and has a hose to start from; none = nothing to settle. */
  const next = (): string | undefined => {
    const { open } = document.getState();
    return open === null ? undefined : owedRuns.owed().find((run) => hasHose(layOf(open, run)));
  };

  /** Whether what a settling under way will answer is still good for the project as it stands. */
  const isStillGood = (): boolean => {
    const { open } = document.getState();
    return open !== null && underWay !== undefined && isAsIn(open, underWay.run, underWay.from);
  };

  /**
   * Settles what is owed, one run after the other, when no further edit comes for a moment. A settling under way whose run
   * was changed since is stopped, other work is waited for; what is in the hand is settled when it is let go.
   */
  const soon = (): void => {
    clearTimeout(resting);
    resting = setTimeout(() => {
      if (!isStillGood()) stop();
      const run = next();
      if (run === undefined || hand.getState().hold !== null) return;
      if (jobs.getState().current === null) void settle(run);
    }, REST_MS);
  };

  /** An edit by hand. */
  const change = (runId: string, name: string, make: (project: Project) => Project, joinLast = false): void => {
    const before = document.getState().open?.history.present;
    document.edit(name, make, joinLast);
    const after = document.getState().open?.history.present;
    if (after !== undefined && after !== before) owedRuns.add(after, runId);
  };

  /** An edit of a run's supports or locks, after which it settles. */
  const edit: typeof change = (...how) => {
    change(...how);
    soon();
  };

  document.subscribe(({ open }, before) => {
    if (open === null || open.history.present === before.open?.history.present) return;
    // Undo and redo lead to states that were never laid, since the next change came too soon.
    if (next() !== undefined) soon();
  });

  // What fell due while the bench was at work, or was not good any more when it came.
  jobs.subscribe(({ current }, before) => {
    if (current === null && before.current !== null) soon();
  });

  return {
    settle,
    soon,
    change,
    edit,
    isUnderWay,
    stop,
    ended,
    /** Nothing settles before the next edit, or before what is in the hand is let go. */
    notYet: (): void => clearTimeout(resting),
  };
}

/** Whether a lay has a hose to start from. */
export function hasHose(lay: Lay | undefined): boolean {
  return lay !== undefined && lay.outcome !== 'no-way' && lay.centreline.points.length > 1;
}
