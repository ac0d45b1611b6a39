import { partOf, type Watch } from '../../base/watch.ts';
import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { Mend, MendAnswer } from '../../document/mends/schema.ts';
import { runChecks } from '../checks/index.ts';
import { compareFindings, type FindingsCompared } from './compareFindings.ts';
import { isAsClean, type QuickLay, worsened } from './laidQuickly.ts';
import { answerWords, curedFinding } from './mendWords.ts';
import { isTooDear, type Work } from './mendWork.ts';

/** How many changes are laid to the end at most, and how many of those for one finding before others get theirs. */
export const MOST_SETTLED = 8;
const MOST_FOR_ONE = 3;

/** A change laid, measured and checked to the end. */
export interface MendTry extends QuickLay {
  readonly lay: Lay;
  readonly findings: readonly Finding[];
  readonly compared: FindingsCompared;
  /** of what is to be mended: what it cures or makes less grave */
  readonly aimed: readonly Finding[];
}

/**
 * The ones worth laying to the end: that cure something as far as a bare lay tells, and do not bring too much; the best few
 * for each finding before any finding gets more.
 */
export function worthSettling(work: Work, quick: readonly QuickLay[]): QuickLay[] {
  const { bench, run, before, aimedAt } = work;
  const promising = quick.flatMap((one) => {
    const after = runChecks(one.mended, one.lays, bench.today);
    const { cured } = compareFindings(before, after);
    const aimed = cured.filter(({ finding }) => aimedAt.includes(finding)).map(({ finding }) => finding);
    if (aimed.length === 0 || isTooDear(worsened(work, one, one.lays), aimed)) return [];
    const left = after.filter((f) => f.run === run.run.id);
    return [{ one, aimed, order: [count(left, 'stop'), count(left, 'look'), one.proposal.change] }];
  });
  const ordered = promising.toSorted((p, q) => byNumbers(p.order, q.order));
  const first = new Set(
    aimedAt.flatMap((finding) => ordered.filter(({ aimed }) => aimed.includes(finding)).slice(0, MOST_FOR_ONE)),
  );
  return ordered
    .toSorted((p, q) => Number(first.has(q)) - Number(first.has(p)))
    .slice(0, MOST_SETTLED)
    .map(({ one }) => one);
}

/** One change laid, measured and checked to the end; undefined where no hose as clean as now could be shown. */
export async function settle(work: Work, one: QuickLay, watch: Watch): Promise<MendTry | undefined> {
  const { bench, run, before, aimedAt } = work;
  const id = run.run.id;
  const still = one.how === 'near' ? one.lays : await bench.layAnew(one.mended, one.run, partOf(watch, 0, 0.6));
  const lays = await bench.measure(one.mended, one.how, still, id, partOf(watch, 0.6, 1));
  const lay = lays.find((l) => l.run === id);
  if (lay === undefined || !isAsClean(lays, work.lay)) return undefined;
  const findings = runChecks(one.mended, lays, bench.today);
  const compared = compareFindings(before, findings);
  const aimed = compared.cured.filter(({ finding }) => aimedAt.includes(finding)).map(({ finding }) => finding);
  return { ...one, lays, lay, findings, compared, aimed };
}

/** The answer that a change is; undefined where it cures nothing that was aimed at, or brings too much. */
export function answerOf({ run, lay: now, aimedAt }: Work, tried: MendTry): MendAnswer | undefined {
  const { lay, lays, findings, aimed, compared, proposal } = tried;
  const { cured, worse, newNotes } = compared;
  if (aimed.length === 0 || isTooDear(worse, aimed)) return undefined;
  const id = run.run.id;
  const mend = mendOf(id, tried);
  const told = cured.map(({ finding, left }) => curedFinding(tried.mended.project, finding, lay, left));
  const longerMm = lay.cutLengthMm - now.cutLengthMm;
  const left = leftOn(id, findings);
  const aims = told.filter(({ finding }) => aimedAt.includes(finding));
  return {
    mend,
    words: answerWords(mend, aims, lay, longerMm),
    how: tried.how,
    lay,
    towards: lays.filter((l) => l.run !== id).map((l) => ({ run: l.run, clearances: l.clearances })),
    findings: [...findings],
    cured: told,
    left,
    stopsLeft: count(left, 'stop'),
    looksLeft: count(left, 'look'),
    ...(worse.length === 0 ? {} : { brings: [...worse] }),
    newNotes: newNotes.filter((f) => f.run === id),
    longerMm,
    change: proposal.change,
    toGet: [...proposal.toGet],
  };
}

/** A change as it is told and made. */
export function mendOf(run: string, { proposal: { edit, words } }: QuickLay): Mend {
  return { id: `${run} ${JSON.stringify(edit)}`, run, edit, words };
}

/** What of a run forbids cutting or is to be looked at. */
export function leftOn(run: string, findings: readonly Finding[]): Finding[] {
  return findings.filter((f) => f.run === run && f.severity !== 'note');
}

export function count(findings: readonly Finding[], severity: Finding['severity']): number {
  return findings.filter((f) => f.severity === severity).length;
}

/** Fewest findings left that forbid cutting, then that are to be looked at, then the least change, then the least of the cut length. */
export function byWorth(p: MendAnswer, q: MendAnswer): number {
  const order = (a: MendAnswer): number[] => [a.stopsLeft, a.looksLeft, a.change, Math.round(Math.abs(a.longerMm))];
  return byNumbers(order(p), order(q)) || (p.mend.id < q.mend.id ? -1 : 1);
}

export function byNumbers(p: readonly number[], q: readonly number[]): number {
  const i = p.findIndex((value, k) => value !== q[k]);
  return i < 0 ? 0 : (p[i] as number) - (q[i] as number);
}
