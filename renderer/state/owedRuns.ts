import type { Project } from '../../shared/document/project/schema.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { isStale } from './runState.ts';

/**
 * The runs that were changed by hand and not laid since, for each state of the project: such a run is laid again whenever
 * the bench stands in that state.
 */
export function createOwedRuns(document: DocumentStore) {
  const madeByHand = new WeakMap<Project, ReadonlySet<string>>();

  /** Of the project as it stands, oldest debt first. */
  const owed = ({ open } = document.getState()): readonly string[] =>
    open === null ? [] : [...(madeByHand.get(open.history.present) ?? [])].filter((run) => isStale(open, run));

  const add = (project: Project, run: string): void => {
    madeByHand.set(project, new Set([...(madeByHand.get(project) ?? []), run]));
  };

  /** After a try that came to nothing; also of the project as it stands, where the run is still what was tried. */
  const forget = (run: string, from: Project): void => {
    const { open } = document.getState();
    const present = open !== null && isAsIn(open, run, from) ? [open.history.present] : [];
    for (const project of [from, ...present])
      madeByHand.set(project, new Set([...(madeByHand.get(project) ?? [])].filter((one) => one !== run)));
  };

  document.subscribe(({ open }, before) => {
    const { present, future } = open?.history ?? {};
    if (present === undefined || present === before.open?.history.present) return;
    // An edit takes along what is owed; undo and redo lead to a state that has its own debts.
    if (future?.length === 0 && !madeByHand.has(present)) for (const run of owed(before)) add(present, run);
  });

  return { owed, add, forget };
}

export type OwedRuns = ReturnType<typeof createOwedRuns>;

/** Whether a run of the project as it stands is still what it was in an earlier state, as far as its hose goes. */
export function isAsIn(open: OpenDocument, run: string, from: Project): boolean {
  return !isStale({ ...open, laidFrom: { [run]: from } }, run);
}
