import type { Finding } from '../../shared/document/lay/schema.ts';
import type { MendAnswer, Mends, NearMend } from '../../shared/document/mends/schema.ts';
import { lackOf, nearestWords, triedWords } from '../../shared/document/wording/mendsWords.ts';

/** What would mend one run, for a person at a terminal: what is to be mended, the answers by number, best first, and what comes nearest where there is none. */
export function mendText(mends: Mends): string {
  const { run, aimedAt, answers, nearest = [] } = mends;
  if (aimedAt.length === 0) return `${run}: nothing here forbids cutting or is to be looked at\n`;
  return [
    `${run}`,
    ...aimedAt.map((finding) => `  ${findingLine(finding)}`),
    '',
    `  ${triedWords(mends)}`,
    ...answers.flatMap(answerLines),
    ...(nearest.length === 0 ? [] : [`  ${nearestWords(mends)}`, ...nearest.flatMap(nearLines)]),
    '',
  ].join('\n');
}

function answerLines(answer: MendAnswer, i: number): string[] {
  const { words, left, brings = [], newNotes, toGet } = answer;
  const brought = brings.map(findingLine);
  const still = left.map(findingLine).filter((line) => !brought.includes(line));
  return [
    `  ${String(i + 1).padStart(2)}  ${words}`,
    ...takes(toGet),
    ...brought.map((line) => `      but then ${line}`),
    ...still.map((line) => `      still ${line}`),
    ...newNotes.map((finding) => `      then ${findingLine(finding)}`),
  ];
}

function nearLines(near: NearMend): string[] {
  const lines = lackOf(near).map(
    (finding) => `      ${near.brings.includes(finding) ? 'but then' : 'still'} ${findingLine(finding)}`,
  );
  return [`   -  ${near.words}`, ...takes(near.toGet), ...lines];
}

function takes(toGet: readonly string[]): string[] {
  return toGet.length === 0 ? [] : [`      takes: ${toGet.join(', ')}`];
}

function findingLine({ severity, message }: Finding): string {
  return `${severity}: ${message}`;
}
