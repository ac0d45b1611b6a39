import type { Project } from '../../shared/document/project/schema.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { isStale } from './runState.ts';

type Answer = Pick<OpenDocument, 'report' | 'laidFrom'>;

/**
 * Remembers the answer that each state of the project had, so that undo brings back the hose and not only the words that
 * led to it. An earlier answer is put back only where it is good for more runs than the one at hand.
 */
export function keepAnswers(document: DocumentStore): void {
  const answers = new WeakMap<Project, Answer>();
  document.subscribe(({ open }, { open: before }) => {
    if (open === null) return;
    const { present } = open.history;
    const kept = answers.get(present);
    if (kept !== undefined && present !== before?.history.present && goodFor(open, kept) > goodFor(open, open))
      return document.answeredAgain(kept);
    answers.set(present, { report: open.report, laidFrom: open.laidFrom });
  });
}

/** For how many runs of the project as it stands an answer was worked out. */
function goodFor(open: OpenDocument, answer: Answer): number {
  const answered = { ...open, ...answer };
  return (answer.report?.lays ?? []).filter((lay) => !isStale(answered, lay.run)).length;
}
