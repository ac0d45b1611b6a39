import type { CheckName } from '../../document/wording/findingWords.ts';
import type { MendContext, Proposal } from './proposal.ts';
import { PROPOSERS } from './proposers.ts';

/** What may mend one finding, most promising first. */
export function proposedFor(context: MendContext): Proposal[] {
  return (PROPOSERS[context.finding.check as CheckName] ?? []).flatMap((propose) => propose(context));
}

/** The first of each list, then the second of each, and so on, so that a count never leaves one with nothing; the same change once. */
export function inTurn(lists: readonly (readonly Proposal[])[]): Proposal[] {
  const longest = Math.max(0, ...lists.map((list) => list.length));
  return distinct(Array.from({ length: longest }, (_, i) => lists.flatMap((list) => list[i] ?? [])).flat());
}

function distinct(proposals: readonly Proposal[]): Proposal[] {
  const known = new Set<string>();
  return proposals.filter(({ edit }) => {
    const key = JSON.stringify(edit);
    return !known.has(key) && known.add(key) !== undefined;
  });
}
