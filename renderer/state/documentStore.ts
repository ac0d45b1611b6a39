import { createStore } from 'zustand/vanilla';
import type { Problem } from '../../shared/base/result.ts';
import type { OpenedProject } from '../../shared/desktop/contract.ts';
import type { EndTrial } from '../../shared/document/endTrial/schema.ts';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { PartTables } from '../../shared/document/parts/schema.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import type { BayPicture } from '../../shared/jobs/contract.ts';
import { type History, historyOf, record, redo, undo } from './history.ts';

/** What lies on the bench: the project with its history, its files, the bay's picture and the last answer. */
export interface OpenDocument {
  readonly history: History<Project>;
  /** as on disk; the project's own text is written anew from the history's present */
  readonly files: OpenedProject;
  readonly tables: PartTables;
  readonly bay: BayPicture | null;
  readonly warnings: readonly Problem[];
  readonly report: LayReport | null;
  /** for each run in the report, the project as it stood when that run was laid */
  readonly laidFrom: Readonly<Record<string, Project>>;
  /** for each run, its last end trial and the project that was made from */
  readonly trials: Readonly<Record<string, { readonly trial: EndTrial; readonly from: Project }>>;
  /** the project as last saved or opened */
  readonly saved: Project;
}

export interface DocumentState {
  readonly open: OpenDocument | null;
}

const EMPTY: DocumentState = { open: null };

export function createDocumentStore() {
  const store = createStore<DocumentState>(() => EMPTY);
  const change = (edit: (open: OpenDocument) => OpenDocument): void => {
    const { open } = store.getState();
    if (open !== null) store.setState({ open: edit(open) });
  };
  return {
    ...store,
    opened: (project: Project, files: OpenedProject, tables: PartTables): void =>
      store.setState({
        open: {
          history: historyOf(project),
          files,
          tables,
          bay: null,
          warnings: [],
          report: null,
          laidFrom: {},
          trials: {},
          saved: project,
        },
      }),
    bayRead: (bay: BayPicture, warnings: readonly Problem[]): void => change((open) => ({ ...open, bay, warnings })),
    /** A named edit: one step back. `joinLast` folds it into the edit of the same name just before. */
    edit: (name: string, make: (project: Project) => Project, joinLast = false): void =>
      change((open) => ({
        ...open,
        history: record(open.history, name, make(open.history.present), joinLast),
      })),
    undo: (): void => change((open) => ({ ...open, history: undo(open.history) })),
    redo: (): void => change((open) => ({ ...open, history: redo(open.history) })),
    /** Keeps an answer, with the project it was worked out from; `runs` absent = all runs were laid. */
    reported: (report: LayReport, from: Project, runs?: readonly string[]): void =>
      change((open) => {
        const fresh = report.lays.map((lay) => lay.run).filter((id) => runs === undefined || runs.includes(id));
        const kept = runs === undefined ? {} : open.laidFrom;
        return { ...open, report, laidFrom: { ...kept, ...Object.fromEntries(fresh.map((id) => [id, from])) } };
      }),
    /** Puts an earlier answer back, such as the one that the project had before an edit that was undone. */
    answeredAgain: (answer: Pick<OpenDocument, 'report' | 'laidFrom'>): void =>
      change((open) => ({ ...open, ...answer })),
    tried: (trial: EndTrial, from: Project): void =>
      change((open) => ({ ...open, trials: { ...open.trials, [trial.run]: { trial, from } } })),
    savedAs: (project: Project): void => change((open) => ({ ...open, saved: project })),
  };
}

export type DocumentStore = ReturnType<typeof createDocumentStore>;

/** Whether the project differs from what is on disk. */
export function hasUnsavedEdits(open: OpenDocument): boolean {
  return open.history.present !== open.saved;
}
