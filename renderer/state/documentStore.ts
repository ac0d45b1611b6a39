import { createStore } from 'zustand/vanilla';
import type { Problem } from '../../shared/base/result.ts';
import type { OpenedProject } from '../../shared/desktop/contract.ts';
import type { PartDrawer } from '../../shared/document/drawer/partDrawer.ts';
import type { EndTrial } from '../../shared/document/endTrial/schema.ts';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { PartSheet } from '../../shared/document/parts/partSheet.ts';
import type { PartTables } from '../../shared/document/parts/schema.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import type { BayPicture } from '../../shared/jobs/contract.ts';
import { type History, historyOf, record, redo, undo } from './history.ts';
import { createPartShelf, type PartShelf } from './parts/partShelf.ts';

/** What lies on the bench: the project with its history, its files, the bay's picture and the last answer. */
export interface OpenDocument {
  readonly history: History<Project>;
  /** what goes with the project as it stands: its own text is written anew from the history's present, its tables are as edited */
  readonly files: OpenedProject;
  /** the parts of the project as it stands */
  readonly tables: PartTables;
  /** the part tables of every state of the project */
  readonly shelf: PartShelf;
  /** the files beside the project as they are on disk */
  readonly onDisk: readonly NamedFile[];
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
  /** Another state of the project, with the tables that go with it. */
  const stand = (open: OpenDocument, history: History<Project>): OpenDocument => {
    const { shelf } = open;
    const { present } = history;
    const sameParts = shelf.sheetsOf(present) === shelf.sheetsOf(open.history.present);
    if (sameParts) return { ...open, history };
    const files = { ...open.files, files: shelf.filesOf(present) };
    return { ...open, history, files, tables: shelf.tablesOf(present) };
  };
  return {
    ...store,
    /** isNew: none of it stands on a disk yet. */
    opened: (project: Project, files: OpenedProject, sheets: readonly PartSheet[], isNew = false): void => {
      const shelf = createPartShelf(project, sheets, files.files);
      store.setState({
        open: {
          history: historyOf(project),
          files,
          tables: shelf.tablesOf(project),
          shelf,
          onDisk: isNew ? [] : files.files,
          bay: null,
          warnings: [],
          report: null,
          laidFrom: {},
          trials: {},
          // A project that was never saved differs from what is on disk, which is nothing.
          saved: isNew ? { ...project } : project,
        },
      });
    },
    bayRead: (bay: BayPicture, warnings: readonly Problem[]): void => change((open) => ({ ...open, bay, warnings })),
    /** A named edit: one step back. `joinLast` folds it into the edit of the same name just before. */
    edit: (name: string, make: (project: Project) => Project, joinLast = false): void =>
      change((open) => {
        const { present } = open.history;
        const made = make(present);
        if (made !== present) open.shelf.put(made, open.shelf.sheetsOf(present));
        return stand(open, record(open.history, name, made, joinLast));
      }),
    /** An edit of the parts, with what it changes in the project; one step back like any other. */
    editParts: (name: string, make: (drawer: PartDrawer) => PartDrawer): void =>
      change((open) => {
        const before = open.shelf.drawerOf(open.history.present);
        const after = make(before);
        if (after.sheets === before.sheets && after.project === before.project) return open;
        const state = after.project === before.project ? { ...after.project } : after.project;
        open.shelf.put(state, after.sheets);
        return stand(open, record(open.history, name, state));
      }),
    undo: (): void => change((open) => stand(open, undo(open.history))),
    redo: (): void => change((open) => stand(open, redo(open.history))),
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
    savedAs: (project: Project): void =>
      change((open) => {
        const meshes = new Set(project.bay.meshes.map(({ path }) => path));
        const written = [
          ...open.files.files.filter(({ path }) => meshes.has(path)),
          ...open.shelf.tableFilesOf(project),
        ];
        const paths = new Set(written.map(({ path }) => path));
        const onDisk = [...open.onDisk.filter(({ path }) => !paths.has(path)), ...written];
        return { ...open, saved: project, onDisk };
      }),
  };
}

export type DocumentStore = ReturnType<typeof createDocumentStore>;

/** Whether the project differs from what is on disk. */
export function hasUnsavedEdits(open: OpenDocument): boolean {
  return open.history.present !== open.saved;
}
