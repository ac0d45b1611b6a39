import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { Project, Run } from '../../shared/document/project/schema.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { isStale } from './runState.ts';

type Answer = Pick<OpenDocument, 'report' | 'laidFrom'>;

/**
 * Remembers the answer that each state of the project had, so that undo brings back the hose and not only the words that
 * led to it. The answer at hand and the remembered one are joined run by run: a lay that is good for the project as it
 * stands goes before one that is not, also when that one comes late, after an undo. Of two that are as good the remembered
 * one is taken on the way back to its state, since that is what was seen there, and else the one at hand. What was laid of
 * a run that is no longer there is not shown. Answers the reports that were joined so: their hoses were not all measured
 * against each other.
 */
export function keepAnswers(document: DocumentStore): WeakSet<LayReport> {
  const joinedReports = new WeakSet<LayReport>();
  const answers = new WeakMap<Project, Answer>();
  document.subscribe(({ open }, before) => {
    if (open === null) return;
    const { present } = open.history;
    const kept = answers.get(present);
    const comesBack = before.open?.history.present !== present;
    const better = kept === undefined ? open : joined(open, kept, comesBack);
    if (better !== open && better !== kept && better.report !== null) joinedReports.add(better.report);
    const shown = withoutStrangers(present, better);
    if (shown !== open) document.answeredAgain({ report: shown.report, laidFrom: shown.laidFrom });
    else answers.set(present, { report: open.report, laidFrom: open.laidFrom });
  });
  return joinedReports;
}

/** Of each run the better of two answers; the very same one where it is the better of every run. */
function joined(open: OpenDocument, kept: Answer, comesBack: boolean): Answer {
  const { present } = open.history;
  /** no lay, one that is stale, one that is good */
  const worth = ({ report, laidFrom }: Answer, run: string): number => {
    if (report === null || !report.lays.some((lay) => lay.run === run)) return 0;
    return isStale({ ...open, laidFrom }, run) ? 1 : 2;
  };
  const gain = ({ id }: Run): number => worth(kept, id) - worth(open, id);
  const gains = present.runs.some((run) => gain(run) > 0);
  // With another lay of the remembered answer goes the same laying as it was measured against that one.
  const goesAlong = ({ id }: Run): boolean => comesBack || (gains && kept.laidFrom[id] === open.laidFrom[id]);
  const isFromKept = (run: Run): boolean => gain(run) > 0 || (gain(run) === 0 && goesAlong(run));
  const fromKept = new Set(present.runs.filter(isFromKept).map(({ id }) => id));
  if (fromKept.size === 0 || kept.report === null) return open;
  if (fromKept.size === present.runs.length || open.report === null) return kept;
  return joinedAnswers(present, { report: open.report, laidFrom: open.laidFrom }, kept, fromKept);
}

/** An answer whose lays, findings and projects laid from are of `kept` for some runs, and of `now` for the others. */
function joinedAnswers(project: Project, now: Answer, kept: Answer, fromKept: ReadonlySet<string>): Answer {
  if (now.report === null || kept.report === null) return now;
  const of = (run: string): Answer => (fromKept.has(run) ? kept : now);
  const runs = project.runs.map(({ id }) => id);
  const lays = runs.flatMap((run) => of(run).report?.lays.filter((lay) => lay.run === run) ?? []);
  const findings = runs.flatMap((run) => of(run).report?.findings.filter((finding) => finding.run === run) ?? []);
  const laidFrom = Object.fromEntries(
    runs.flatMap((run) => {
      const from = of(run).laidFrom[run];
      return from === undefined ? [] : [[run, from] as const];
    }),
  );
  return { report: { ...now.report, lays, findings }, laidFrom };
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
