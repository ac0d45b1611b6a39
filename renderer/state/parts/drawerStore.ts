import { createStore } from 'zustand/vanilla';
import type { Problem } from '../../../shared/base/result.ts';
import type { ImportPlan } from '../../../shared/document/drawer/partEdits.ts';
import type { PartKind, StoredRow } from '../../../shared/document/parts/columns.ts';
import type { PartDraft, Typed } from './draftPart.ts';

/** A table that was brought in and lies on top until it is said what becomes of it. */
export interface Incoming {
  readonly kind: PartKind;
  readonly name: string;
  readonly rows: readonly StoredRow[PartKind][];
  readonly plan: ImportPlan;
  /** why it cannot be taken as asked; empty = nothing stands in the way */
  readonly problems: readonly Problem[];
}

export interface DrawerState {
  readonly isOpen: boolean;
  readonly kind: PartKind;
  /** id of the chosen part of each kind; null = a new one's card, absent = none */
  readonly chosen: Readonly<Partial<Record<PartKind, string | null>>>;
  readonly search: string;
  /** cards that were begun and not kept, by `draftKey`: nothing typed is lost by looking elsewhere */
  readonly drafts: Readonly<Record<string, PartDraft>>;
  readonly incoming: Incoming | null;
  /** the page on which the chosen end is measured lies open */
  readonly measuring: boolean;
  /** what was read of ends, by card and kind of end: looking at another card loses none of it */
  readonly readings: Readonly<Record<string, Readonly<Record<string, Typed>>>>;
  /** why the last Keep or Take out was not done, in sentences */
  readonly refused: readonly string[];
}

const SHUT: DrawerState = {
  isOpen: false,
  kind: 'ends',
  chosen: {},
  search: '',
  drafts: {},
  incoming: null,
  measuring: false,
  readings: {},
  refused: [],
};

/** What lies open in the drawer of parts at this moment. Nothing of it is saved; what is kept is the document's. */
export function createDrawerStore() {
  const store = createStore<DrawerState>(() => SHUT);
  return { ...store, set: store.setState, empty: (): void => store.setState(SHUT) };
}

export type DrawerStore = ReturnType<typeof createDrawerStore>;

export function draftKey(kind: PartKind, id: string | null): string {
  return `${kind}/${id ?? ''}`;
}
