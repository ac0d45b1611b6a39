import type { Finding } from '../lay/schema.ts';
import type { Mends, NearMend } from '../mends/schema.ts';

/** How many changes were tried and what came of it, in one or two sentences. */
export function triedWords({ tried, answers, nearest = [] }: Pick<Mends, 'tried' | 'answers' | 'nearest'>): string {
  const count = `${tried} ${tried === 1 ? 'change' : 'changes'} tried`;
  if (answers.length > 0) return `${count}; these mend it, best first:`;
  if (tried === 0) return 'Nothing here that a change of hose, ends, holds or slack would mend.';
  return nearest.length === 0
    ? `${count}; none of them mends it, and none comes nearer.`
    : `${count}; none of them mends it without making something else worse.`;
}

/** Said before what comes nearest, where something has no answer: what of it. */
export function nearestWords({ aimedAt, answers }: Pick<Mends, 'aimedAt' | 'answers'>): string {
  const uncured = aimedAt.filter(
    (finding) => !answers.some(({ cured }) => cured.some((c) => isSame(c.finding, finding))),
  );
  return answers.length === 0
    ? 'What comes nearest, and what it lacks:'
    : `Nothing tried cures ${uncured.length === 1 ? 'one of them' : `${uncured.length} of them`}. What comes nearest, and what it lacks:`;
}

function isSame(one: Finding, other: Finding): boolean {
  return one.check === other.check && one.message === other.message;
}

/** What keeps a change from being an answer, then what else is left, once each, the gravest first. */
export function lackOf({ brings, left }: NearMend): Finding[] {
  const others = left.filter((finding) => !brings.some((one) => isSame(one, finding)));
  const rank = ({ severity }: Finding): number => Number(severity !== 'stop');
  return [...brings.toSorted((p, q) => rank(p) - rank(q)), ...others.toSorted((p, q) => rank(p) - rank(q))];
}
