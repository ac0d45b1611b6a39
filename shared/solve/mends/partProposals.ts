import { centrelineMinRadiusMm } from '../../document/parts/centrelineMinRadius.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { Hose } from '../../document/parts/schema.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** How many hoses, and how many sleeves, are proposed at most. */
const MOST_HOSES = 5;
const MOST_SLEEVES = 2;

/** The hoses of the same size on the shelf, those made most alike first. What they bear the checks tell. */
export function otherHoses(context: MendContext): Proposal[] {
  return hosesThat(context, () => true);
}

/** Hoses of the same size that bend tighter. */
export function tighterHoses(context: MendContext): Proposal[] {
  const now = centrelineMinRadiusMm(context.run.hose);
  return hosesThat(context, (hose) => centrelineMinRadiusMm(hose) < now);
}

/** Hoses of the same size whose outside is no bare steel braid. */
export function softerHoses(context: MendContext): Proposal[] {
  return hosesThat(context, ({ cover }) => cover !== 'steel-braid');
}

function hosesThat({ run, tables }: MendContext, suits: (hose: Hose) => boolean): Proposal[] {
  const now = run.hose;
  const unlike = (hose: Hose): number => Number(hose.core !== now.core) * 2 + Number(hose.cover !== now.cover);
  return tables.hoses
    .filter((hose) => hose.id !== now.id && hose.dash === now.dash && suits(hose))
    .toSorted((p, q) => unlike(p) - unlike(q) || (p.id < q.id ? -1 : 1))
    .slice(0, MOST_HOSES)
    .map((hose) => ({
      edit: { kind: 'hose', hose: hose.id },
      words: `Another hose, ${hose.name} (${hose.construction}),`,
      how: 'near',
      change: 5,
      toGet: [`${hose.name} (${hose.id})`],
    }));
}

/**
 * Sleeves that go over the bare hose, the closest first, for a run that has none. A sleeve keeps braid off what it would saw and heat off the
 * hose; it never raises what the hose itself bears, and the checks do not count it so.
 */
export function sleeves(context: MendContext): Proposal[] {
  return context.run.sleeve === undefined ? sleevesOver(context) : [];
}

/** Sleeves that go over the hose, in the place of one that does not. */
export function widerSleeves(context: MendContext): Proposal[] {
  return context.finding.rule === 'sleeve-goes-over' ? sleevesOver(context) : [];
}

function sleevesOver({ run, tables }: MendContext): Proposal[] {
  const bareMm = outsideDiameterMm(run.hose);
  return tables.sleeves
    .filter(({ id, insideDiameterMm }) => id !== run.sleeve?.id && insideDiameterMm >= bareMm)
    .toSorted((p, q) => p.insideDiameterMm - q.insideDiameterMm || (p.id < q.id ? -1 : 1))
    .slice(0, MOST_SLEEVES)
    .map((sleeve) => ({
      edit: { kind: 'sleeve', sleeve: sleeve.id },
      words: `A sleeve over the whole hose, ${sleeve.name},`,
      how: 'near',
      change: 2,
      toGet: [`${sleeve.name} (${sleeve.id})`],
    }));
}

/** A sleeve where a bare hose is nearer to heat than the rule that asks for one; nearer than the stricter rule no sleeve helps. */
export function sleeveWhereAsked(context: MendContext): Proposal[] {
  return context.finding.rule === 'heat-sleeve-within' ? sleeves(context) : [];
}

/** A bleed where air stays, for a run that has none. */
export function bleed({ run, finding }: MendContext): Proposal[] {
  if (run.run.bledAtCrest === true || finding.at === undefined) return [];
  const words = `A bleed at the crest, ${lengthText(finding.at.arcLengthMm)} from shoulder A,`;
  return [{ edit: { kind: 'bleed' }, words, how: 'near', change: 3, toGet: ['a bleed'] }];
}
