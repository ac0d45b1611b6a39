import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { Project } from '../../shared/document/project/schema.ts';
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

/** Of each run the better of two answers; the very same one where it is the better of every run that has a lay. */
function joined(open: OpenDocument, kept: Answer, comesBack: boolean): Answer {
  const { present } = open.history;
  const has = ({ report }: Answer, run: string): boolean => report?.lays.some((lay) => lay.run === run) === true;
  const isGood = (answer: Answer, run: string): boolean =>
    has(answer, run) && !isStale({ ...open, laidFrom: answer.laidFrom }, run);
  const runs = present.runs.map(({ id }) => id).filter((run) => has(open, run) || has(kept, run));
  const gains = (run: string): boolean => isGood(kept, run) && !isGood(open, run);
  const gained = runs.some(gains);
  // With another lay of the remembered answer goes the same laying as it was measured against that one.
  const goesAlong = (run: string): boolean => comesBack || (gained && kept.laidFrom[run] === open.laidFrom[run]);
  const isFromKept = (run: string): boolean =>
    gains(run) || (isGood(kept, run) === isGood(open, run) && goesAlong(run));
  const fromKept = new Set(runs.filter(isFromKept));
  if (fromKept.size === 0) return open;
  return fromKept.size === runs.length ? kept : joinedAnswers(runs, open, kept, fromKept);
}

/** An answer whose lays, findings and projects laid from are of `kept` for some runs, and of `now` for the others. */
function joinedAnswers(runs: readonly string[], now: Answer, kept: Answer, fromKept: ReadonlySet<string>): Answer {
  const whole = now.report ?? kept.report;
  if (whole === null) return now;
  const of = (run: string): Answer => (fromKept.has(run) ? kept : now);
  const lays = runs.flatMap((run) => of(run).report?.lays.filter((lay) => lay.run === run) ?? []);
  const findings = runs.flatMap((run) => of(run).report?.findings.filter((finding) => finding.run === run) ?? []);
  const laidFrom = Object.fromEntries(
    runs.flatMap((run) => {
      const from = of(run).laidFrom[run];
      return from === undefined ? [] : [[run, from] as const];
    }),
  );
  return { report: { ...whole, lays, findings }, laidFrom };
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
