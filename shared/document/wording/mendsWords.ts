import type { Finding } from '../lay/schema.ts';
import type { MendAnswer, Mends, NearMend } from '../mends/schema.ts';

/** How many changes were tried and what came of it, in one or two sentences. */
export function triedWords(mends: Pick<Mends, 'tried' | 'answers' | 'nearest' | 'aimedAt'>): string {
  const { tried, answers, nearest = [] } = mends;
  const count = `${tried} ${tried === 1 ? 'change' : 'changes'} tried`;
  if (answers.length > 0) return `${count}; ${answeredWords(mends)}`;
  if (tried === 0) return 'Nothing here that a change of hose, ends, holds or slack would mend.';
  return nearest.length === 0
    ? `${count}; none of them mends it, and none comes nearer.`
    : `${count}; none of them mends it without making something else worse.`;
}

/** What the answers are worth: where cutting is forbidden, those after which it is not are told from the others. */
function answeredWords({ answers, aimedAt }: Pick<Mends, 'answers' | 'aimedAt'>): string {
  const whole = answers.filter(({ stopsLeft }) => stopsLeft === 0).length;
  if (aimedAt.length === 1 || aimedAt.every(({ severity }) => severity !== 'stop')) return 'these mend it, best first:';
  if (whole === answers.length) return 'after each of these nothing forbids cutting, best first:';
  return whole === 0
    ? 'each of these cures a part of it, best first, and something still forbids cutting:'
    : `after the first ${whole === 1 ? '' : `${whole} `}of these nothing forbids cutting; the others cure a part of it:`;
}

/** Whether the hose may be cut after a change, and how much is left to be decided. */
export function verdictWords({ stopsLeft, looksLeft }: Pick<MendAnswer, 'stopsLeft' | 'looksLeft'>): string {
  const decide = looksLeft === 0 ? '' : `${looksLeft} to decide first`;
  const forbid = `${stopsLeft} ${stopsLeft === 1 ? 'forbids' : 'forbid'} it`;
  if (stopsLeft > 0) return ['still not to be cut', forbid, ...(decide ? [decide] : [])].join(', ');
  return looksLeft === 0 ? 'then laid clean' : `then fit to cut, ${decide}`;
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
