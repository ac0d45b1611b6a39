import type { Finding } from '../../shared/document/lay/schema.ts';
import type { MendAnswer, Mends } from '../../shared/document/mends/schema.ts';

/** What would mend one run, for a person at a terminal: what is to be mended, then the answers by number, best first. */
export function mendText({ run, aimedAt, tried, answers }: Mends): string {
  if (aimedAt.length === 0) return `${run}: nothing here forbids cutting or is to be looked at\n`;
  const lines = [`${run}`, ...aimedAt.map((finding) => `  ${findingLine(finding)}`), ''];
  const count = `${tried} ${tried === 1 ? 'change' : 'changes'} tried`;
  if (answers.length === 0)
    return [...lines, `  ${count}; none of them mends it without making something else worse`, ''].join('\n');
  return [...lines, `  ${count}; these mend it, best first:`, ...answers.flatMap(answerLines), ''].join('\n');
}

function answerLines(answer: MendAnswer, i: number): string[] {
  const { words, left, brings = [], newNotes, toGet } = answer;
  const brought = brings.map(findingLine);
  const still = left.map(findingLine).filter((line) => !brought.includes(line));
  return [
    `  ${String(i + 1).padStart(2)}  ${words}`,
    ...(toGet.length === 0 ? [] : [`      takes: ${toGet.join(', ')}`]),
    ...brought.map((line) => `      but then ${line}`),
    ...still.map((line) => `      still ${line}`),
    ...newNotes.map((finding) => `      then ${findingLine(finding)}`),
  ];
}

function findingLine({ severity, message }: Finding): string {
  return `${severity}: ${message}`;
}
