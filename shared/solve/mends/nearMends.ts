import type { Finding } from '../../document/lay/schema.ts';
import { findingKey } from '../../document/mends/findingKey.ts';
import type { NearMend } from '../../document/mends/schema.ts';
import { runChecks } from '../checks/index.ts';
import { compareFindings } from './compareFindings.ts';
import { type QuickLay, worsened } from './laidQuickly.ts';
import { curedFinding } from './mendWords.ts';
import type { Work } from './mendWork.ts';
import { byNumbers, count, leftOn, type MendTry, mendOf } from './settleMends.ts';

/** How many changes that are no answers are laid to the end, to say how near they come, and how many are told. */
const MOST_LAID = 2;
const MOST_TOLD = 2;
/** Share of what a finding lacks that a change must win to be told as nearer. */
const NEARER_SHARE = 0.1;

/** Of what was laid only quickly, the few that come nearest to curing one of these as far as that tells. */
export function worthNearing(work: Work, quick: readonly QuickLay[], uncured: readonly Finding[]): QuickLay[] {
  const scored = quick.flatMap((one) => {
    const after = runChecks(one.mended, one.lays, work.bench.today);
    const { cured } = compareFindings(work.before, after);
    const cures = cured.filter(({ finding }) => uncured.includes(finding)).length;
    const won = wonOf(uncured, after);
    if (cures === 0 && won < NEARER_SHARE) return [];
    const worse = worsened(work, one, one.lays);
    return [{ one, order: [count(worse, 'stop'), -cures, worse.length, -won, one.proposal.change] }];
  });
  return scored
    .toSorted((p, q) => byNumbers(p.order, q.order))
    .slice(0, MOST_LAID)
    .map(({ one }) => one);
}

/** Of changes that are no answers those that cure one of these or come nearer to it, the nearest first. */
export function nearestOf(work: Work, tries: readonly MendTry[], uncured: readonly Finding[]): MendTry[] {
  const scored = tries.flatMap((one) => {
    const cures = one.aimed.filter((finding) => uncured.includes(finding)).length;
    const won = wonOf(uncured, one.findings);
    if (cures === 0 && won < NEARER_SHARE) return [];
    const left = [
      ...leftOn(work.run.run.id, one.findings),
      ...one.compared.worse.filter((f) => f.run !== work.run.run.id),
    ];
    return [
      { one, order: [count(left, 'stop'), uncured.length - cures, count(left, 'look'), -won, one.proposal.change] },
    ];
  });
  return scored.toSorted((p, q) => byNumbers(p.order, q.order)).map(({ one }) => one);
}

/** The nearest of them, in words. */
export function nearMends(work: Work, tries: readonly MendTry[], uncured: readonly Finding[]): NearMend[] {
  return nearestOf(work, tries, uncured)
    .slice(0, MOST_TOLD)
    .map((one) => nearMend(work, one, uncured));
}

function nearMend({ run, aimedAt }: Work, one: MendTry, uncured: readonly Finding[]): NearMend {
  const id = run.run.id;
  const cures = one.compared.cured
    .filter(({ finding }) => aimedAt.includes(finding))
    .map(({ finding, left }) => curedFinding(one.mended.project, finding, one.lay, left).words);
  const does = cures.length > 0 ? [...new Set(cures)].join('; ') : `comes nearer: ${nearerText(one, uncured)}`;
  const mend = mendOf(id, one);
  return {
    mend,
    words: `${mend.words} ${does}`,
    cures,
    brings: [...one.compared.worse],
    left: leftOn(id, one.findings),
    toGet: [...one.proposal.toGet],
  };
}

function nearerText({ findings }: MendTry, uncured: readonly Finding[]): string {
  const won = uncured.filter((finding) => wonOf([finding], findings) >= NEARER_SHARE);
  return won
    .flatMap((finding) => alike(finding, findings) ?? [])
    .map(({ message }) => message)
    .join(' ');
}

/** The greatest share of what one of these lacks that findings afterwards do not lack any more; below zero = further off. */
function wonOf(uncured: readonly Finding[], after: readonly Finding[]): number {
  const shares = uncured.flatMap((finding) => {
    const now = alike(finding, after);
    return now === undefined || finding.margin >= 0 ? [] : [(now.margin - finding.margin) / -finding.margin];
  });
  return shares.length === 0 ? 0 : Math.max(...shares);
}

/** The same finding afterwards, the one that lacks most of several; undefined where it is gone. */
function alike(finding: Finding, after: readonly Finding[]): Finding | undefined {
  return after
    .filter((f) => f.severity === finding.severity && findingKey(f) === findingKey(finding))
    .toSorted((p, q) => p.margin - q.margin)[0];
}
