import type { Finding } from '../../document/lay/schema.ts';
import type { OneEdit } from '../../document/mends/schema.ts';
import type { PartTables } from '../../document/parts/schema.ts';
import { inTurn, proposedFor } from './inTurn.ts';
import type { Proposal } from './proposal.ts';
import { leftOn, type MendTry } from './settleMends.ts';

/** How many second changes are proposed on top of one first change. */
const MOST_ON_ONE = 6;

/**
 * Second changes on top of one that cures something and brings too much, or does not go far enough: what its own lay then wants mended,
 * what it brought first. Pure.
 */
export function secondSteps(tables: PartTables, base: MendTry): Proposal[] {
  const { edit: first } = base.proposal;
  if (first.kind === 'both') return [];
  const lists = wantedNext(base).map((finding) =>
    proposedFor({ tables, run: base.run, lay: base.lay, finding }).flatMap((proposal) => {
      const { edit: second } = proposal;
      return second.kind === 'both' || undoes(second, first) ? [] : [onTop(base.proposal, first, proposal, second)];
    }),
  );
  return inTurn(lists).slice(0, MOST_ON_ONE);
}

function wantedNext({ run, findings, compared }: MendTry): Finding[] {
  const rank = (f: Finding): number => Number(f.severity !== 'stop') * 2 + Number(!compared.worse.includes(f));
  return leftOn(run.run.id, findings).toSorted((p, q) => rank(p) - rank(q));
}

function onTop(base: Proposal, first: OneEdit, next: Proposal, second: OneEdit): Proposal {
  const joint = base.words.endsWith(',') ? ' and' : ', and';
  return {
    edit: { kind: 'both', first, second },
    words: `${base.words}${joint} ${inSentence(next.words)}`,
    how: 'anew',
    change: base.change + next.change,
    toGet: [...base.toGet, ...next.toGet],
  };
}

/** Words that began with a capital, in the middle of a sentence; `END A` stays. */
function inSentence(words: string): string {
  const [head = '', next = ''] = words;
  return next === next.toUpperCase() && next !== ' ' ? words : `${head.toLowerCase()}${words.slice(1)}`;
}

/** Whether a second change would only take back the first. */
function undoes(second: OneEdit, first: OneEdit): boolean {
  const parts = partsOf(first);
  return partsOf(second).some((part) => parts.includes(part));
}

/** What of a run a change settles. */
function partsOf(edit: OneEdit): string[] {
  switch (edit.kind) {
    case 'end':
    case 'free-clock':
      return [`end ${edit.side}`];
    case 'ends':
      return ['end a', 'end b'];
    case 'size':
      return ['end a', 'end b', 'hose'];
    case 'change-support':
      return [`support ${edit.support.id}`];
    case 'let-go':
      return [`support ${edit.support}`];
    case 'hold':
      return [];
    default:
      return [edit.kind];
  }
}
