import type { DocumentStore } from './documentStore.ts';
import { addRun, type RunDraft, removeRun, runOf } from './edits/newRun.ts';
import type { HandStore } from './handStore.ts';
import type { SessionStore } from './sessionStore.ts';

interface RunNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly hand: HandStore;
}

/** Runs stated, added and taken away; each is one step back. */
export function createOnRuns({ document, session, hand }: RunNeeds) {
  return {
    /** Opens the card on which a new run is stated. */
    state: (): void => {
      if (document.getState().open === null) return;
      session.goTo('runs');
      hand.set({ stating: true });
    },
    /** Gives a port that is picked in the bay to the end that is next; one that the other end had is changed for it. */
    pick: (port: string): void => {
      const { joins } = hand.getState();
      if (joins === null) return;
      const other = joins.next === 'a' ? 'b' : 'a';
      const swapped = joins[other] === port ? { [other]: joins[joins.next] } : {};
      hand.set({ joins: { ...joins, ...swapped, [joins.next]: port, next: other } });
    },
    /** Adds what a draft states and chooses it; a draft with something missing adds nothing. */
    add: (draft: RunDraft): void => {
      const { open } = document.getState();
      const run = open === null ? null : runOf(draft, open.history.present, open.tables);
      if (run === null) return;
      document.edit('new run', (project) => addRun(project, run));
      session.choose(run.id);
      hand.set({ stating: false });
    },
    /** Takes a run away and chooses the one after it. Its lay goes with it when the runs are laid or checked again. */
    remove: (runId: string): void => {
      const runs = document.getState().open?.history.present.runs ?? [];
      const at = runs.findIndex(({ id }) => id === runId);
      const next = runs[at + 1] ?? runs[at - 1];
      document.edit('remove run', (project) => removeRun(project, runId));
      session.choose(next?.id ?? null);
    },
  };
}
