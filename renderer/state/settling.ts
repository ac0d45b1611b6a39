import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import type { DocumentStore } from './documentStore.ts';
import type { HandStore } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import { isStale, layOf } from './runState.ts';

interface SettlingNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  readonly hand: HandStore;
}

/** ms without a further edit after which a run changed by numbers is laid again near where it lies. */
const REST_MS = 350;

/** Title of laying again near where the hose lies; other work is never stopped for it. */
const SETTLING = 'Laying this run again near where it lies';

/** Lays a run that was changed by hand again, near where it lies and by itself. */
export function createSettling({ document, jobs, hand }: SettlingNeeds) {
  let resting: ReturnType<typeof setTimeout> | undefined;
  /** the run that each state of the project made by hand is about; such a state is laid whenever the bench stands in it */
  const madeByHand = new WeakMap<Project, string>();

  const isUnderWay = (): boolean => jobs.getState().current?.title === SETTLING;

  /** Lays a run again near where it lies, along the shape in the hand where there is one. Without a hose it does nothing. */
  const settle = async (runId: string, along?: readonly Vec3[]): Promise<void> => {
    clearTimeout(resting);
    const { open } = document.getState();
    if (open === null || open.report === null || !hasHose(layOf(open, runId))) return;
    const project = open.history.present;
    const files = { projectText: serialiseProject(project), files: open.files.files };
    const input = { ...files, run: runId, earlier: open.report, ...(along === undefined ? {} : { along }) };
    const report = await jobs.work(SETTLING, 'relayRun', input);
    if (report !== null) document.reported(report, project, [runId]);
  };

  /** Settles itself when no settling is under way any more. */
  const ended = (): Promise<void> =>
    new Promise((resolve) => {
      if (!isUnderWay()) return resolve();
      const stop = jobs.subscribe(({ current }) => {
        if (current !== null) return;
        stop();
        resolve();
      });
    });

  /** The run that was changed by hand and not laid since; none = nothing to settle. */
  const owed = ({ open } = document.getState()): string | undefined => {
    const run = open === null ? undefined : madeByHand.get(open.history.present);
    return open !== null && run !== undefined && isStale(open, run) ? run : undefined;
  };

  /**
   * Settles what is owed when no further edit comes for a moment. A settling under way starts over, other work is let be;
   * what is in the hand is settled when it is let go.
   */
  const soon = (): void => {
    clearTimeout(resting);
    resting = setTimeout(() => {
      const run = owed();
      const isBusy = jobs.getState().current !== null;
      const wasSettling = isUnderWay();
      if (wasSettling) jobs.cancelQuietly();
      if (run === undefined || hand.getState().hold !== null) return;
      if (!isBusy) void settle(run);
      else if (wasSettling) soon();
    }, REST_MS);
  };

  /** An edit by hand. */
  const change = (runId: string, name: string, make: (project: Project) => Project, joinLast = false): void => {
    const before = document.getState().open?.history.present;
    document.edit(name, make, joinLast);
    const after = document.getState().open?.history.present;
    if (after !== undefined && after !== before) madeByHand.set(after, runId);
  };

  /** An edit of a run's supports or locks, after which it settles. */
  const edit: typeof change = (...how) => {
    change(...how);
    soon();
  };

  document.subscribe(({ open }, before) => {
    const { present, future } = open?.history ?? {};
    if (present === undefined || present === before.open?.history.present) return;
    // An edit of something else takes along what is owed.
    const run = owed(before);
    if (run !== undefined && future?.length === 0 && !madeByHand.has(present)) madeByHand.set(present, run);
    // Undo and redo lead to states that were never laid, since the next change came too soon.
    if (owed() !== undefined) soon();
  });

  return {
    settle,
    soon,
    change,
    edit,
    isUnderWay,
    ended,
    /** Nothing settles before the next edit, or before what is in the hand is let go. */
    notYet: (): void => clearTimeout(resting),
  };
}

/** Whether a lay has a hose to start from. */
export function hasHose(lay: Lay | undefined): boolean {
  return lay !== undefined && lay.outcome !== 'no-way' && lay.centreline.points.length > 1;
}
