import { describeProblem, good, type Problem } from '../../../shared/base/result.ts';
import type { DesktopApi } from '../../../shared/desktop/contract.ts';
import type { PartDrawer } from '../../../shared/document/drawer/partDrawer.ts';
import {
  mergeParts,
  planImport,
  putPart,
  removePart,
  replaceParts,
} from '../../../shared/document/drawer/partEdits.ts';
import type { Column, PartKind, StoredRow } from '../../../shared/document/parts/columns.ts';
import type { MeasuredEnd } from '../../../shared/document/parts/measure/measureEnd.ts';
import type { MeasureKind } from '../../../shared/document/parts/measure/readings.ts';
import { readPartSheets } from '../../../shared/document/parts/parsePartTables.ts';
import { rowsOfKind, tablesOfSheets } from '../../../shared/document/parts/partSheet.ts';
import { partTableCsv } from '../../../shared/document/parts/partTableCsv.ts';
import { resolveProject } from '../../../shared/document/project/resolve.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import type { DocumentStore } from '../documentStore.ts';
import type { JobsStore } from '../jobsStore.ts';
import { SAFE_WORDS } from '../safeWords.ts';
import {
  blankDraft,
  copyDraft,
  draftOf,
  draftValues,
  isTouched,
  type PartDraft,
  readDraft,
  type Typed,
  typeInto,
} from './draftPart.ts';
import { type DrawerStore, draftKey } from './drawerStore.ts';
import { measuredTexts, readingsKey } from './measuring.ts';

interface PartsNeeds {
  readonly document: DocumentStore;
  readonly drawer: DrawerStore;
  readonly jobs: JobsStore;
  readonly desktop: Pick<DesktopApi, 'chooseFiles' | 'saveFile'>;
}

/** The drawer of parts: looked through, written on cards, kept; each part kept or taken out is one step back. */
export function createOnParts({ document, drawer, jobs, desktop }: PartsNeeds) {
  const now = (): PartDrawer | null => {
    const { open } = document.getState();
    return open === null ? null : open.shelf.drawerOf(open.history.present);
  };
  const rowOf = (kind: PartKind, id: string | null | undefined): StoredRow[PartKind] | undefined =>
    rowsOfKind<PartKind>(now()?.sheets ?? [], kind).find((row) => row.id === id);

  /** The card that lies open: as begun, else as the chosen part stands; null = none is chosen. */
  const card = (): PartDraft | null => {
    const { kind, chosen, drafts } = drawer.getState();
    const id = chosen[kind];
    if (id === undefined) return null;
    const row = rowOf(kind, id);
    const begun = drafts[draftKey(kind, id)];
    return begun ?? (row === undefined ? null : draftOf(kind, row));
  };

  const choose = (id: string | null | undefined, kind = drawer.getState().kind): void =>
    drawer.set(({ chosen }) => {
      const { [kind]: _old, ...others } = chosen;
      return {
        kind,
        chosen: id === undefined ? others : { ...others, [kind]: id },
        measuring: false,
        refused: [],
      };
    });

  const begin = (draft: PartDraft): void => {
    drawer.set(({ drafts }) => ({ drafts: { ...drafts, [draftKey(draft.kind, draft.id)]: draft } }));
    choose(draft.id, draft.kind);
  };

  const without = (draft: PartDraft): void =>
    drawer.set(({ drafts }) => {
      const { [draftKey(draft.kind, draft.id)]: _done, ...others } = drafts;
      return { drafts: others, refused: [] };
    });

  const write = (change: (draft: PartDraft) => PartDraft): void => {
    const draft = card();
    if (draft === null) return;
    const next = change(draft);
    if (isTouched(next))
      drawer.set(({ drafts }) => ({ drafts: { ...drafts, [draftKey(next.kind, next.id)]: next }, refused: [] }));
    else without(next);
  };

  const refuse = (problems: readonly Problem[]): void => drawer.set({ refused: problems.map(describeProblem) });

  /** Problems that a change of the parts would bring to the runs, such as an end that no longer goes on its hose. */
  const broken = (before: PartDrawer, after: PartDrawer): readonly Problem[] => {
    const problems = ({ project, sheets }: PartDrawer): readonly Problem[] => {
      const resolved = resolveProject(project, tablesOfSheets(sheets));
      return resolved.ok ? [] : resolved.problems;
    };
    const known = new Set(problems(before).map(describeProblem));
    return problems(after).filter((problem) => !known.has(describeProblem(problem)));
  };

  const keep = (): void => {
    const draft = card();
    const before = now();
    if (draft === null || before === null) return;
    const read = readDraft(draft, rowsOfKind<PartKind>(before.sheets, draft.kind));
    if (!read.ok) {
      write((old) => ({ ...old, asked: true }));
      drawer.set({ refused: [] });
      return;
    }
    const row = read.value;
    const harm = broken(before, putPart(before, draft.kind, row));
    if (harm.length > 0) {
      refuse(harm);
      return;
    }
    const { one } = PART_KIND_WORDS[draft.kind];
    document.editParts(draft.id === null ? `new ${one}` : `change ${one}`, (parts) => putPart(parts, draft.kind, row));
    without(draft);
    choose(row.id, draft.kind);
  };

  const remove = (): void => {
    const { kind, chosen } = drawer.getState();
    const id = chosen[kind];
    const before = now();
    if (id === undefined || id === null || before === null) return;
    const done = removePart(before, kind, id);
    if (!done.ok) {
      refuse(done.problems);
      return;
    }
    const rows = rowsOfKind<PartKind>(before.sheets, kind);
    const at = rows.findIndex((row) => row.id === id);
    const next = rows[at + 1] ?? rows[at - 1];
    document.editParts(`take out ${PART_KIND_WORDS[kind].one}`, () => done.value);
    const draft = drawer.getState().drafts[draftKey(kind, id)];
    if (draft !== undefined) without(draft);
    choose(next?.id, kind);
  };

  const bringIn = async (): Promise<void> => {
    const { kind } = drawer.getState();
    const picked = await desktop.chooseFiles();
    const before = now();
    if (picked === null || before === null) return;
    if (!picked.ok) return jobs.tellProblems('The table could not be read', picked.problems, SAFE_WORDS.drawerKept);
    const decoder = new TextDecoder();
    const files = picked.value.map(({ path, bytes }) => ({ path, kind, text: decoder.decode(bytes) }));
    const read = readPartSheets(files);
    const name = files.map(({ path }) => path).join(', ');
    const rows = read.ok ? rowsOfKind<PartKind>(read.value, kind) : [];
    drawer.set({
      incoming: { kind, name, rows, plan: planImport(before, kind, rows), problems: read.ok ? [] : read.problems },
    });
  };

  const takeIn = (how: 'merge' | 'replace'): void => {
    const { incoming } = drawer.getState();
    const before = now();
    if (incoming === null || before === null) return;
    const { kind, rows } = incoming;
    const done = how === 'merge' ? good(mergeParts(before, kind, rows)) : replaceParts(before, kind, rows);
    const problems = done.ok ? broken(before, done.value) : done.problems;
    if (!done.ok || problems.length > 0) {
      drawer.set({ incoming: { ...incoming, problems } });
      return;
    }
    const { many } = PART_KIND_WORDS[kind];
    document.editParts(how === 'merge' ? `bring in ${many}` : `replace ${many}`, () => done.value);
    drawer.set({ incoming: null, kind });
    const [first] = [...incoming.plan.fresh, ...incoming.plan.changed];
    if (first !== undefined) choose(first, kind);
  };

  const exportKind = async (): Promise<void> => {
    const { kind } = drawer.getState();
    const rows = rowsOfKind<PartKind>(now()?.sheets ?? [], kind);
    const bytes = new TextEncoder().encode(partTableCsv(kind, rows));
    const done = await desktop.saveFile(`${kind}.csv`, bytes);
    if (!done.ok) jobs.tellProblems('The table could not be written', done.problems, SAFE_WORDS.drawerKept);
    else if (done.value.kind === 'saved')
      jobs.tell(`Written: ${PART_KIND_WORDS[kind].many}`, [done.value.where], 'done');
  };

  return {
    card,
    choose,
    keep,
    remove,
    bringIn,
    takeIn,
    exportKind,
    /** Opens the drawer, at a part where one is named. */
    open: (kind?: PartKind, id?: string): void => {
      if (now() === null) return;
      drawer.set({ isOpen: true });
      if (kind !== undefined) drawer.set({ kind, search: '', measuring: false, refused: [] });
      if (kind !== undefined && id !== undefined) choose(id, kind);
    },
    shut: (): void => drawer.set({ isOpen: false }),
    showKind: (kind: PartKind): void => drawer.set({ kind, search: '', measuring: false, refused: [] }),
    /** Begins a blank card, or goes on with the one begun. */
    startNew: (): void => {
      const { kind, drafts } = drawer.getState();
      begin(drafts[draftKey(kind, null)] ?? blankDraft(kind));
    },
    startCopy: (): void => {
      const { kind, chosen } = drawer.getState();
      const row = rowOf(kind, chosen[kind]);
      if (row !== undefined) begin(copyDraft(kind, row));
    },
    type: (column: Column, typed: Typed): void => write((draft) => typeInto(draft, column, typed)),
    /** Writes measured figures on the card; they are typed in, not kept. */
    fill: (texts: Readonly<Record<string, string>>): void => write((draft) => filled(draft, texts)),
    /** Writes down one reading of an end that is measured. */
    takeReading: (draft: PartDraft, kind: MeasureKind, key: string, typed: Typed): void => {
      const at = readingsKey(draft, kind);
      drawer.set(({ readings }) => ({ readings: { ...readings, [at]: { ...readings[at], [key]: typed } } }));
    },
    /** Writes what an end was measured as on its card. */
    fillMeasured: (measured: MeasuredEnd, kind: MeasureKind, texts: Readonly<Record<string, Typed>>): void =>
      write((draft) => {
        const hasSource = draftValues(draft).values['source'] !== undefined;
        return filled(draft, measuredTexts(measured, kind, texts, hasSource));
      }),
    drop: (): void => {
      const draft = card();
      if (draft === null) return;
      without(draft);
      if (draft.id === null) choose(undefined, draft.kind);
    },
    leaveIn: (): void => drawer.set({ incoming: null }),
  };
}

/** A card with texts typed into it; lengths are in mm. */
function filled(draft: PartDraft, texts: Readonly<Record<string, string>>): PartDraft {
  const typed = Object.entries(texts).map(([key, text]) => [key, { text, unit: 'mm' as const }]);
  return { ...draft, typed: { ...draft.typed, ...Object.fromEntries(typed) } };
}

export type OnParts = ReturnType<typeof createOnParts>;
