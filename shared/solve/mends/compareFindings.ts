import { LEVEL_DEG } from '../../base/tolerances.ts';
import type { Finding, Severity } from '../../document/lay/schema.ts';
import { findingKey } from '../../document/mends/findingKey.ts';

const GRAVITY: Readonly<Record<Severity, number>> = { note: 0, look: 1, stop: 2 };
/** Of its limit. A margin that falls by more than this makes a finding that stays worse; less is what laying anew changes. */
const WORSE_SHARE = 0.02;
/** By unit: less of a margin than this is not told on any paper, and changes with every lay. */
const WORSE_LEAST: Readonly<Record<string, number>> = { mm: 0.1, deg: LEVEL_DEG };

/** What a change of the project does to the findings. */
export interface FindingsCompared {
  /** findings that are gone, or less grave: as they were, and what is left of them */
  readonly cured: readonly { readonly finding: Finding; readonly left?: Finding }[];
  /** findings that are new, graver, or further beyond their limit; notes do not count */
  readonly worse: readonly Finding[];
  readonly newNotes: readonly Finding[];
}

/**
 * Findings before and after, matched by check, run, rule and the thing they speak of; of several before, and of several that are left, the
 * gravest, then the one furthest beyond its limit, stands for all. Notes are never cured and never worse.
 */
export function compareFindings(before: readonly Finding[], after: readonly Finding[]): FindingsCompared {
  const [was, is] = [worstOfEach(before), worstOfEach(after)];
  const cured = [...was].flatMap(([key, finding]) => {
    const left = is.get(key);
    if (finding.severity === 'note') return [];
    if (left === undefined) return [{ finding }];
    return GRAVITY[left.severity] < GRAVITY[finding.severity] ? [{ finding, left }] : [];
  });
  const worse = after.filter((finding) => isWorse(finding, was.get(findingKey(finding))));
  const newNotes = [...is].flatMap(([key, finding]) => (finding.severity === 'note' && !was.has(key) ? [finding] : []));
  return { cured, worse, newNotes };
}

function isWorse(is: Finding, was: Finding | undefined): boolean {
  if (is.severity === 'note') return false;
  if (was === undefined || GRAVITY[is.severity] > GRAVITY[was.severity]) return true;
  const isLess = GRAVITY[is.severity] < GRAVITY[was.severity];
  const least = Math.max(WORSE_SHARE * Math.abs(is.limit), WORSE_LEAST[is.unit] ?? 0);
  return !isLess && is.margin < was.margin - least;
}

function worstOfEach(findings: readonly Finding[]): Map<string, Finding> {
  const worst = new Map<string, Finding>();
  for (const finding of findings) {
    const key = findingKey(finding);
    const known = worst.get(key);
    if (known === undefined || isGraver(finding, known)) worst.set(key, finding);
  }
  return worst;
}

function isGraver(one: Finding, other: Finding): boolean {
  const more = GRAVITY[one.severity] - GRAVITY[other.severity];
  return more > 0 || (more === 0 && one.margin < other.margin);
}
