import type { Project } from '../../shared/document/project/schema.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { isStale } from './runState.ts';

type Answer = Pick<OpenDocument, 'report' | 'laidFrom'>;

/**
 * Remembers the answer that each state of the project had, so that undo brings back the hose and not only the words that
 * led to it. An earlier answer is put back only where it is good for more runs than the one at hand, also when that one
 * comes late, after an undo; and, on the way back to its state, where it is good for as many, since that is what was seen
 * there. What was laid of a run that is no longer there is not shown.
 */
export function keepAnswers(document: DocumentStore): void {
  const answers = new WeakMap<Project, Answer>();
  document.subscribe(({ open }, before) => {
    if (open === null) return;
    const { present } = open.history;
    const kept = answers.get(present);
    const comesBack = before.open?.history.present !== present;
    const gained = kept === undefined ? -1 : goodFor(open, kept) - goodFor(open, open);
    const better = kept !== undefined && (gained > 0 || (comesBack && gained === 0)) ? kept : open;
    const shown = withoutStrangers(present, better);
    if (shown !== open) document.answeredAgain({ report: shown.report, laidFrom: shown.laidFrom });
    else answers.set(present, { report: open.report, laidFrom: open.laidFrom });
  });
}

/** For how many runs of the project as it stands an answer was worked out. */
function goodFor(open: OpenDocument, answer: Answer): number {
  const answered = { ...open, ...answer };
  const known = new Set(open.history.present.runs.map(({ id }) => id));
  return (answer.report?.lays ?? []).filter((lay) => known.has(lay.run) && !isStale(answered, lay.run)).length;
}

/** An answer without lays and findings of runs that the project does not have; the very same one when there are none. */
function withoutStrangers(project: Project, answer: Answer): Answer {
  const { report, laidFrom } = answer;
  const known = new Set(project.runs.map(({ id }) => id));
  if (report === null || report.lays.every((lay) => known.has(lay.run))) return answer;
  const lays = report.lays.filter((lay) => known.has(lay.run));
  const findings = report.findings.filter((finding) => known.has(finding.run));
  return { report: { ...report, lays, findings }, laidFrom };
}
