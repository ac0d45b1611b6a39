import type { MendContext, Proposal } from './proposal.ts';

/** A hose led by itself, out of the bundles in which it is tied to the one that the finding names. */
export function ownWay({ finding }: MendContext): Proposal[] {
  const other = finding.with;
  if (other?.kind !== 'run') return [];
  return [
    {
      edit: { kind: 'own-way', apartFrom: other.id },
      words: `Led by itself, untied from ${other.id},`,
      how: 'anew',
      change: 3,
      toGet: [],
    },
  ];
}
