import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Finding, Lay } from '../../document/lay/schema.ts';
import { applyMend } from '../../document/mends/applyMend.ts';
import type { Mend, MendAnswer } from '../../document/mends/schema.ts';
import type { PartTables } from '../../document/parts/schema.ts';
import { parseProject } from '../../document/project/parseProject.ts';
import { type ResolvedProject, type ResolvedRun, resolveProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { serialiseProject } from '../../document/project/serialiseProject.ts';
import type { CheckName } from '../../document/wording/findingWords.ts';
import type { Tube } from '../bay/tubeField.ts';
import { runChecks } from '../checks/index.ts';
import type { LayCrew, LayHow, LayTask } from '../layRuns/layTask.ts';
import { shareWatch } from '../layRuns/shareWatch.ts';
import { compareFindings } from './compareFindings.ts';
import { otherAngles, otherPairs } from './endProposals.ts';
import { answerWords, curedFinding } from './mendWords.ts';
import type { Proposal } from './proposal.ts';
import { PROPOSERS } from './proposers.ts';

/** What mends are tried on: a project as it is written, its parts, and the lays as they are. */
export interface MendBench {
  /** as it is written, so that a mend changes what is saved */
  readonly written: Project;
  readonly resolved: ResolvedProject;
  readonly tables: PartTables;
  readonly lays: readonly Lay[];
  readonly today?: string;
  /** the hoses of the other runs, and what stands on their ports */
  readonly others: readonly Tube[];
  readonly crew: LayCrew;
  /** All lays with one run laid again near where it lies. */
  layNear(mended: ResolvedProject, run: ResolvedRun, watch: Watch): Lay[];
  /** All lays with one run laid anew. */
  layAnew(mended: ResolvedProject, run: ResolvedRun, watch: Watch): Promise<Lay[]>;
  /** The lays with all that is measured of one run once it lies, as the job that lays them so would have it. */
  measure(
    mended: ResolvedProject,
    how: MendAnswer['how'],
    lays: readonly Lay[],
    run: string,
    watch: Watch,
  ): Promise<Lay[]>;
}

export interface TriedMends {
  readonly aimedAt: readonly Finding[];
  readonly tried: number;
  readonly answers: readonly MendAnswer[];
}

/** How many changes are laid at most, how many of them to the end, and how many of those for one finding before others get theirs. */
const MOST_TRIED = 32;
const MOST_SETTLED = 8;
const MOST_FOR_ONE = 3;
/** How many changes of a near miss are laid as near misses, which takes longest. */
const MOST_NEAR_MISSES = 6;

/**
 * Lays a run with each change that may mend what forbids cutting it or is to be looked at (`PROPOSERS`), and answers
 * those that cure a finding and bring none that is new, graver or further beyond its limit, on this run or another; what cures something
 * that forbids cutting may bring what is to be looked at, and says so. checks: only their findings are to be mended; absent = all. Each change is first laid quickly, and dropped where it does not lie clean; the
 * best are then laid, measured and checked as laying the project with that change does. Where no single change cures
 * what forbids cutting, pairs of ends are tried. Order: fewest findings left that forbid cutting, then that are to be looked at, then the
 * least change for the builder, then the least change of the cut length. Counts limit the work, never time, so the same input gives the
 * same answer.
 */
export async function tryMends(
  bench: MendBench,
  run: ResolvedRun,
  checks: readonly string[] | undefined,
  watch: Watch,
): Promise<TriedMends> {
  const before = runChecks(bench.resolved, bench.lays, bench.today);
  const aimedAt = before.filter(
    (f) => f.run === run.run.id && f.severity !== 'note' && (checks === undefined || checks.includes(f.check)),
  );
  const lay = bench.lays.find((l) => l.run === run.run.id);
  if (lay === undefined || aimedAt.length === 0) return { aimedAt, tried: 0, answers: [] };
  const work: Work = { bench, run, lay, before, aimedAt };
  const singles = await tryAll(work, proposalsFor(work), partOf(watch, 0, 0.7));
  const isStopped = aimedAt.some((f) => f.severity === 'stop' && !singles.answers.some((a) => isCuredBy(a, f)));
  const mayTurnBoth = aimedAt.some((f) => PROPOSERS[f.check as CheckName]?.includes(otherAngles) === true);
  const pairs =
    isStopped && mayTurnBoth
      ? await tryAll(work, otherPairs({ run, tables: bench.tables }), partOf(watch, 0.7, 1))
      : { tried: 0, answers: [] };
  return {
    aimedAt,
    tried: singles.tried + pairs.tried,
    answers: [...singles.answers, ...pairs.answers].toSorted(byWorth),
  };
}

function isCuredBy({ cured }: MendAnswer, finding: Finding): boolean {
  return cured.some((c) => c.finding === finding);
}

interface Work {
  readonly bench: MendBench;
  readonly run: ResolvedRun;
  readonly lay: Lay;
  readonly before: readonly Finding[];
  readonly aimedAt: readonly Finding[];
}

/** A proposal as a project of its own. */
interface Candidate {
  readonly proposal: Proposal;
  readonly mended: ResolvedProject;
  readonly run: ResolvedRun;
}

/** What each finding asks for in turn, so that a count never leaves a finding with nothing; the same change once. */
function proposalsFor({ bench, run, lay, aimedAt }: Work): Proposal[] {
  const lists = aimedAt.map((finding) =>
    (PROPOSERS[finding.check as CheckName] ?? []).flatMap((propose) =>
      propose({ tables: bench.tables, run, lay, finding }),
    ),
  );
  const longest = Math.max(0, ...lists.map((list) => list.length));
  return Array.from({ length: longest }, (_, i) => lists.flatMap((list) => list[i] ?? [])).flat();
}

async function tryAll(work: Work, proposals: readonly Proposal[], watch: Watch) {
  const candidates = distinct(proposals)
    .flatMap((proposal) => candidateOf(work, proposal) ?? [])
    .slice(0, MOST_TRIED);
  const quick = await laidQuickly(work, candidates, partOf(watch, 0, 0.6));
  const chosen = worthSettling(work, quick);
  const answers: MendAnswer[] = [];
  for (const [i, one] of chosen.entries()) {
    stopIfCancelled(watch);
    const part = partOf(watch, 0.6 + (0.4 * i) / chosen.length, 0.6 + (0.4 * (i + 1)) / chosen.length);
    part.report({ fraction: 0, doing: one.proposal.words });
    const answer = await settled(work, one, saying(part, one.proposal.words));
    if (answer !== undefined) answers.push(answer);
  }
  return { tried: candidates.length, answers };
}

function distinct(proposals: readonly Proposal[]): Proposal[] {
  const known = new Set<string>();
  return proposals.filter(({ edit }) => {
    const key = JSON.stringify(edit);
    return !known.has(key) && known.add(key) !== undefined;
  });
}

/** Undefined where the parts do not go together, or where what reads no path already brings too much. */
function candidateOf({ bench, run, lay, before, aimedAt }: Work, proposal: Proposal): Candidate | undefined {
  const id = run.run.id;
  // As it will be read from its file, so that what is laid here has the hash of what is laid then.
  const parsed = parseProject(serialiseProject(applyMend(bench.written, { run: id, edit: proposal.edit })));
  const resolved = parsed.ok ? resolveProject(parsed.value, bench.tables) : undefined;
  const own = resolved?.ok === true ? resolved.value.runs.find((r) => r.run.id === id) : undefined;
  if (resolved?.ok !== true || own === undefined) return undefined;
  // Without a path only the checks speak that need none.
  const bare: Lay = { ...lay, outcome: 'no-way', centreline: { points: [], arcLengthMm: [] } };
  const stated = runChecks({ ...resolved.value, runs: [own] }, [bare], bench.today).filter((f) => f.check !== 'laid');
  const { worse } = compareFindings(before, stated);
  return isTooDear(worse, aimedAt) ? undefined : { proposal, mended: resolved.value, run: own };
}

/** Whether a change that cures these brings too much: anything that forbids cutting, and anything at all where it cures nothing that does. */
function isTooDear(worse: readonly Finding[], cured: readonly Finding[]): boolean {
  const stops = (findings: readonly Finding[]): boolean => findings.some((f) => f.severity === 'stop');
  return stops(worse) || (worse.length > 0 && !stops(cured));
}

interface QuickLay extends Candidate {
  readonly how: MendAnswer['how'];
  readonly lays: readonly Lay[];
}

/** Those that lie clean, or near where the run lies as clean as it does now. One that was to be laid near where it lies, and is not clean there or makes something worse, is looked for anew. */
async function laidQuickly(work: Work, candidates: readonly Candidate[], watch: Watch): Promise<QuickLay[]> {
  const { bench, lay } = work;
  const hasHose = lay.outcome !== 'no-way' && lay.centreline.points.length > 1;
  const near = new Map<Candidate, QuickLay>();
  const local = hasHose ? candidates.filter(({ proposal }) => proposal.how === 'near') : [];
  for (const [i, one] of local.entries()) {
    stopIfCancelled(watch);
    const part = partOf(watch, (0.4 * i) / local.length, (0.4 * (i + 1)) / local.length);
    const lays = bench.layNear(one.mended, one.run, saying(part, one.proposal.words));
    if (isAsClean(lays, lay) && worsened(work, one, lays).length === 0) near.set(one, { ...one, how: 'near', lays });
  }
  const rest = candidates.filter((one) => !near.has(one));
  const anew = await laidAnew(work, rest, 'if-clean', partOf(watch, 0.4, 0.8));
  // What a near miss breaks anyway it may break on: other findings of it are mended by what stays near.
  const broken = lay.outcome === 'near-miss' ? local.filter((one) => !near.has(one) && !anew.has(one)) : [];
  const missed = await laidAnew(work, broken.slice(0, MOST_NEAR_MISSES), 'with-less', partOf(watch, 0.8, 1));
  return candidates.flatMap((one) => near.get(one) ?? anew.get(one) ?? missed.get(one) ?? []);
}

async function laidAnew(
  { bench }: Work,
  candidates: readonly Candidate[],
  how: LayHow,
  watch: Watch,
): Promise<Map<Candidate, QuickLay>> {
  const shared = shareWatch(watch, candidates.length);
  const tasks = candidates.map(({ run }): LayTask => ({ how, run, others: bench.others }));
  const done = await bench.crew.doEach(tasks, (i) => saying(shared(i), candidates[i]?.proposal.words ?? ''));
  return new Map(
    candidates.flatMap((one, i): [Candidate, QuickLay][] => {
      const lay = done[i]?.lay;
      return lay === undefined ? [] : [[one, { ...one, how: 'anew', lays: replaced(bench.lays, lay) }]];
    }),
  );
}

/** A watch that says what is tried, however far it is. */
function saying(watch: Watch, doing: string): Watch {
  return { ...watch, report: ({ fraction }) => watch.report({ fraction, doing }) };
}

/**
 * What a change makes worse, as far as a lay tells that is only laid. What is measured once it lies (movement, heat, hands,
 * tolerances) is taken as it is now: that tells at the end, and till then what hangs on it is not told worse.
 */
function worsened({ bench, lay, before }: Work, one: Candidate, lays: readonly Lay[]): readonly Finding[] {
  const { rock, taper, tolerance, built, heat, hands } = lay;
  const measures = Object.entries({ rock, taper, tolerance, built, heat, hands }).filter(([, m]) => m !== undefined);
  const known = lays.map((l) => (l.run === lay.run ? { ...Object.fromEntries(measures), ...l } : l));
  return compareFindings(before, runChecks(one.mended, known, bench.today)).worse;
}

/** A near miss may stay one: another of its findings may be mended all the same. */
function isAsClean(lays: readonly Lay[], now: Lay): boolean {
  return lays.some((l) => l.run === now.run && (l.outcome === 'laid' || l.outcome === now.outcome));
}

function replaced(lays: readonly Lay[], by: Lay): Lay[] {
  return lays.map((l) => (l.run === by.run ? by : l));
}

/**
 * The ones worth laying to the end: that cure something as far as a bare lay tells, and do not bring too much; the best few
 * for each finding before any finding gets more.
 */
function worthSettling(work: Work, quick: readonly QuickLay[]): QuickLay[] {
  const { bench, run, before, aimedAt } = work;
  const promising = quick.flatMap((one) => {
    const after = runChecks(one.mended, one.lays, bench.today);
    const { cured } = compareFindings(before, after);
    const aimed = cured.filter(({ finding }) => aimedAt.includes(finding)).map(({ finding }) => finding);
    if (aimed.length === 0 || isTooDear(worsened(work, one, one.lays), aimed)) return [];
    const left = after.filter((f) => f.run === run.run.id);
    const count = (severity: Finding['severity']): number => left.filter((f) => f.severity === severity).length;
    return [{ one, aimed, order: [count('stop'), count('look'), one.proposal.change] }];
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

/** One change laid, measured and checked to the end; undefined where it then cures nothing that was aimed at, or brings too much. */
async function settled(work: Work, one: QuickLay, watch: Watch): Promise<MendAnswer | undefined> {
  const { bench, run, lay: now, before, aimedAt } = work;
  const id = run.run.id;
  const still = one.how === 'near' ? one.lays : await bench.layAnew(one.mended, one.run, partOf(watch, 0, 0.6));
  const lays = await bench.measure(one.mended, one.how, still, id, partOf(watch, 0.6, 1));
  const lay = lays.find((l) => l.run === id);
  if (lay === undefined) return undefined;
  const findings = runChecks(one.mended, lays, bench.today);
  const { cured, worse, newNotes } = compareFindings(before, findings);
  const aimed = cured.filter(({ finding }) => aimedAt.includes(finding)).map(({ finding }) => finding);
  if (aimed.length === 0 || isTooDear(worse, aimed)) return undefined;
  const { edit, words, toGet } = one.proposal;
  const mend: Mend = { id: `${id} ${JSON.stringify(edit)}`, run: id, edit, words };
  const told = cured.map(({ finding, left }) => curedFinding(one.mended.project, finding, lay, left));
  const longerMm = lay.cutLengthMm - now.cutLengthMm;
  const left = findings.filter((f) => f.run === id && f.severity !== 'note');
  return {
    mend,
    words: answerWords(
      mend,
      told.filter(({ finding }) => aimedAt.includes(finding)),
      lay,
      longerMm,
    ),
    how: one.how,
    lay,
    towards: lays.filter((l) => l.run !== id).map((l) => ({ run: l.run, clearances: l.clearances })),
    findings,
    cured: told,
    left,
    stopsLeft: left.filter((f) => f.severity === 'stop').length,
    looksLeft: left.filter((f) => f.severity === 'look').length,
    ...(worse.length === 0 ? {} : { brings: [...worse] }),
    newNotes: newNotes.filter((f) => f.run === id),
    longerMm,
    change: one.proposal.change,
    toGet: [...toGet],
  };
}

function byWorth(p: MendAnswer, q: MendAnswer): number {
  const order = (a: MendAnswer): number[] => [a.stopsLeft, a.looksLeft, a.change, Math.round(Math.abs(a.longerMm))];
  return byNumbers(order(p), order(q)) || (p.mend.id < q.mend.id ? -1 : 1);
}

function byNumbers(p: readonly number[], q: readonly number[]): number {
  const i = p.findIndex((value, k) => value !== q[k]);
  return i < 0 ? 0 : (p[i] as number) - (q[i] as number);
}
