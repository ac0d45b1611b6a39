import type { Watch } from '../../base/watch.ts';
import type { Finding, Lay } from '../../document/lay/schema.ts';
import { findingKey } from '../../document/mends/findingKey.ts';
import type { MendAnswer } from '../../document/mends/schema.ts';
import { runChecks } from '../checks/index.ts';
import type { LayHow, LayTask } from '../layRuns/layTask.ts';
import { shareWatch } from '../layRuns/shareWatch.ts';
import { compareFindings } from './compareFindings.ts';
import type { Candidate, Work } from './mendWork.ts';

/** How many changes of a near miss are laid as near misses, which takes longest, and how many of these with other ends. */
const MOST_NEAR_MISSES = 8;
const MOST_ENDS_MISSED = 4;

/** A change with the lays that it gives, as far as a lay tells that is only laid. */
export interface QuickLay extends Candidate {
  readonly how: MendAnswer['how'];
  readonly lays: readonly Lay[];
}

/** Those that lie clean, or near where the run lies as clean as it does now. One that was to be laid near where it lies, and is not clean there or makes something worse, is looked for anew. */
export async function laidQuickly(work: Work, candidates: readonly Candidate[], watch: Watch): Promise<QuickLay[]> {
  const { lay } = work;
  const hasHose = lay.outcome !== 'no-way' && lay.centreline.points.length > 1;
  const local = hasHose ? candidates.filter(({ proposal }) => proposal.how === 'near') : [];
  const part = shareWatch(watch, 3);
  const [wide, near] = await Promise.all([
    laidAnew(work, without(candidates, local), 'if-clean', part(0)),
    laidNear(work, local, part(1)),
  ]);
  const anew = await laidAnew(work, without(local, [...near.keys()]), 'if-clean', part(2));
  return candidates
    .flatMap((one) => near.get(one) ?? wide.get(one) ?? anew.get(one) ?? [])
    .filter(({ lays }) => isAsClean(lays, lay));
}

function without(all: readonly Candidate[], some: readonly Candidate[]): Candidate[] {
  return all.filter((one) => !some.includes(one));
}

/** Near where the run lies; those that do not lie as clean there as it does, or make something worse, are left out. */
async function laidNear(work: Work, local: readonly Candidate[], watch: Watch): Promise<Map<Candidate, QuickLay>> {
  const { bench, lay } = work;
  const shared = shareWatch(watch, local.length);
  const done = await Promise.all(
    local.map((one, i) => bench.layNear(one.mended, one.run, saying(shared(i), one.proposal.words))),
  );
  return new Map(
    local.flatMap((one, i): [Candidate, QuickLay][] => {
      const lays = done[i] ?? [];
      const stays = isAsClean(lays, lay) && worsened(work, one, lays).length === 0;
      return stays ? [[one, { ...one, how: 'near', lays }]] : [];
    }),
  );
}

/**
 * Of those that do not lie clean the ones of a near miss that may stay one: what it breaks anyway it may break on, other
 * findings of it are mended by what stays near.
 */
export async function laidAsMisses(work: Work, unlaid: readonly Candidate[], watch: Watch): Promise<QuickLay[]> {
  if (work.lay.outcome !== 'near-miss') return [];
  const turned = unlaid.filter(({ proposal }) => proposal.edit.kind === 'end').slice(0, MOST_ENDS_MISSED);
  const broken = [...turned, ...unlaid.filter(({ proposal }) => proposal.how === 'near')].slice(0, MOST_NEAR_MISSES);
  const missed = await laidAnew(work, broken, 'with-less-briefly', watch);
  return unlaid.flatMap((one) => missed.get(one) ?? []).filter(({ lays }) => isAsClean(lays, work.lay));
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
export function saying(watch: Watch, doing: string): Watch {
  return { ...watch, report: ({ fraction }) => watch.report({ fraction, doing }) };
}

/**
 * What a change makes worse, as far as a lay tells that is only laid. What is measured once it lies (movement, heat, hands,
 * tolerances) tells at the end: till then only that is worse which is so both with what was measured of the hose as it is now, and without.
 */
export function worsened({ bench, lay, before }: Work, one: Candidate, lays: readonly Lay[]): readonly Finding[] {
  const { rock, taper, tolerance, built, heat, hands } = lay;
  const measures = Object.entries({ rock, taper, tolerance, built, heat, hands }).filter(([, m]) => m !== undefined);
  const known = lays.map((l) => (l.run === lay.run ? { ...Object.fromEntries(measures), ...l } : l));
  const worse = (of: readonly Lay[]): readonly Finding[] =>
    compareFindings(before, runChecks(one.mended, of, bench.today)).worse;
  const bare = new Set(worse(lays).map(findingKey));
  return worse(known).filter((finding) => bare.has(findingKey(finding)));
}

/** A near miss may stay one: another of its findings may be mended all the same. Where it finds no way, most checks have nothing to say, which is no cure. */
export function isAsClean(lays: readonly Lay[], now: Lay): boolean {
  return lays.some((l) => l.run === now.run && (l.outcome === 'laid' || l.outcome === now.outcome));
}

function replaced(lays: readonly Lay[], by: Lay): Lay[] {
  return lays.map((l) => (l.run === by.run ? by : l));
}
