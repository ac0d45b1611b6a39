import { createStore } from 'zustand/vanilla';
import { type DocumentStore, hasUnsavedEdits } from './documentStore.ts';

/** What becomes of a project with changes that are not saved when another one comes on the bench. */
export type Leaving = 'save' | 'drop' | 'stay';

interface LeavingNeeds {
  readonly document: DocumentStore;
  /** true = it is saved */
  readonly save: () => Promise<boolean>;
}

/** Asks before a project with changes that are not saved is taken off the bench. */
export function createLeaving({ document, save }: LeavingNeeds) {
  /** name of the project that is asked about */
  const store = createStore<{ readonly asked: string | null }>(() => ({ asked: null }));
  let told: ((how: Leaving) => void) | null = null;
  const answer = (how: Leaving): void => {
    const tell = told;
    told = null;
    store.setState({ asked: null });
    tell?.(how);
  };
  return {
    ...store,
    answer,
    /** Whether the open project may go: at once where all of it is saved, else as the user says. */
    mayGo: async (): Promise<boolean> => {
      const { open } = document.getState();
      if (open === null || !hasUnsavedEdits(open)) return true;
      answer('stay');
      const how = await new Promise<Leaving>((resolve) => {
        told = resolve;
        store.setState({ asked: open.history.present.name });
      });
      return how === 'drop' || (how === 'save' && (await save()));
    },
  };
}
