import type { Clearance, Finding, Lay } from '../../document/lay/schema.ts';

/** By how much a lay keeps a limit that an earlier one broke, mm, and the clearance in question where there is one. */
export interface MendedMargin {
  readonly marginMm: number;
  readonly clearance?: Clearance;
}

/**
 * The margin that a new lay has to the limit of a finding that it no longer has: for the distance to a thing from what is
 * proven, for the bend radius and the straight tails likewise. Undefined where the limit is no length, where it is measured at an
 * extreme of movement, or where the finding went for another reason than distance, such as a sleeve.
 */
export function mendedMargin(finding: Finding, lay: Lay): MendedMargin | undefined {
  const found = marginOf(finding, lay);
  return found === undefined || found.marginMm < 0 ? undefined : found;
}

function marginOf({ check, rule, limit, with: thing }: Finding, lay: Lay): MendedMargin | undefined {
  if (check === 'bendRadius') return { marginMm: lay.minRadius.provenAtLeastMm - lay.minRadius.limitMm };
  if (check === 'straightTail') return { marginMm: Math.min(lay.straightTailMm.a, lay.straightTailMm.b) - limit };
  if (rule === 'chafe-rock') return undefined;
  if (thing === undefined || !['clearance', 'heatDistance', 'chafe'].includes(check)) return undefined;
  const clearance = lay.clearances
    .filter(({ to }) => to.kind === thing.kind && to.id === thing.id)
    .toSorted((p, q) => p.provenAtLeastMm - q.provenAtLeastMm)[0];
  return clearance === undefined ? undefined : { marginMm: clearance.provenAtLeastMm - limit, clearance };
}
