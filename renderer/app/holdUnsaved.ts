import type { Bench } from '../state/bench.ts';
import { hasUnsavedEdits } from '../state/documentStore.ts';

/** A window whose project has changes that are not saved is not closed without a question: the browser's own, or the shell's. */
export function holdUnsaved(page: Pick<Window, 'addEventListener'>, { document }: Pick<Bench, 'document'>): void {
  page.addEventListener('beforeunload', (event) => {
    const { open } = document.getState();
    if (open !== null && hasUnsavedEdits(open)) event.preventDefault();
  });
}
