import type { Clearance, Finding } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { Bundle, Skin, SkinKind } from '../../document/project/schema.ts';
import {
  type RequiredClearance,
  requiredRunClearance,
  requiredSkinClearance,
} from '../../document/rules/requiredClearance.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge, meets } from './judge.ts';
import { placeText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';

/**
 * Every clearance of the lay to a skin that is not hot, and to other runs, against what the project asks for now, scan
 * uncertainty on top. Too near a skin forbids cutting; hoses too near each other are looked at, since they may be
 * clamped together, and forbid cutting where they pass through each other. Judged by what is proven; where only the
 * last tenth of a millimetre of the proof is short, it is a note. Hot skins are `heatDistance`'s.
 */
export function clearance(context: CheckContext): Finding[] {
  return context.lay.clearances.flatMap((c) => {
    const skin = skinOfClearance(context.project, c);
    if (skin?.kind === 'hot') return [];
    return judgeClearance(context, c, skin);
  });
}

const SKIN_MENDS: Record<Exclude<SkinKind, 'hot'>, string> = {
  plain: 'Move it with a waypoint or a clamp, or choose another end angle.',
  composite: 'Stand it off with a clamp, or lead it another way.',
  'sharp-edge': 'Lead it clear of the edge; a grommet or edge trim where it passes through.',
  wiring: 'Lead it further from the loom, or the loom from it; clamp each by itself, never to the other.',
  moving: 'Clamp it so that it cannot reach the moving part, whatever it does.',
};

function judgeClearance(context: CheckContext, c: Clearance, skin: Skin | undefined): Finding[] {
  const { project, run } = context;
  const required = requiredOf(context, c, skin);
  const bundle = c.to.kind === 'run' ? bundleOf(project, run.run.id, c.to.id) : undefined;
  const ruleLimit = required.use.rule.value + project.bay.scanUncertaintyMm;
  const limit = required.requiredMm;
  const short = severityOfProof(c, limit);
  const apart = c.to.kind === 'run' && c.provenAtLeastMm >= 0;
  const uncertainty =
    project.bay.scanUncertaintyMm > 0 && bundle === undefined
      ? `, ${lengthText(project.bay.scanUncertaintyMm)} of it for the scan`
      : '';
  return judge({
    check: 'clearance',
    run: run.run.id,
    use: required.use,
    sense: 'at-least',
    limit,
    ruleLimit,
    measured: c.provenAtLeastMm,
    unit: 'mm',
    severity: short === 'stop' && apart ? 'look' : short,
    at: c.at,
    with: c.to,
    message: `${nearText(c)} ${thingText(project, c)} ${placeText(c.at)}; ${lengthText(limit)} is asked for${uncertainty}.${proofText(c, limit)}`,
    mend:
      skin === undefined || skin.kind === 'hot' ? 'Move one of them, or clamp them together.' : SKIN_MENDS[skin.kind],
    ...(bundle === undefined ? ownLimit(required, skin) : bundleLimit(required, bundle)),
  });
}

function requiredOf({ project, run }: CheckContext, c: Clearance, skin: Skin | undefined): RequiredClearance {
  if (skin !== undefined) return requiredSkinClearance(project, run.run.id, skin);
  const between = requiredRunClearance(project, run.run.id, c.to.id);
  // A skin that the project no longer has: what the lay was made for still stands.
  return c.to.kind === 'run' ? between : { ...between, requiredMm: c.requiredMm };
}

function nearText(c: Clearance): string {
  return c.provenAtLeastMm < 0
    ? `Reaches ${lengthText(-c.provenAtLeastMm)} into`
    : `Comes within ${lengthText(c.provenAtLeastMm)} of`;
}

/** A clearance that measures enough and falls short only by what the proof could not close is a note, not a stop. */
export function severityOfProof(c: Clearance, limitMm: number): 'note' | 'stop' {
  return meets('at-least', c.clearanceMm, limitMm) ? 'note' : 'stop';
}

/** Said where a clearance measures enough but is proven to a little less. */
export function proofText(c: Clearance, limitMm: number): string {
  return severityOfProof(c, limitMm) === 'stop'
    ? ''
    : ` It measures ${lengthText(c.clearanceMm)}; the lower figure is what is proven.`;
}

/** Where the skin states its own clearance, that is whose word it is. */
export function ownLimit(required: RequiredClearance, skin: Skin | undefined): { source?: string; ownReason?: string } {
  if (required.statedMm === undefined || skin === undefined) return {};
  return {
    source: `stated in the project for the skin "${skin.name}"; the rule: ${required.use.rule.source}`,
    ownReason: `${lengthText(required.statedMm)} is stated for the skin "${skin.name}", the rule says ${lengthText(required.use.rule.value)}`,
  };
}

/** Between hoses of a bundle its gap holds, on the project's word. */
export function bundleLimit(required: RequiredClearance, bundle: Bundle): { source: string; ownReason: string } {
  const asked = lengthText(required.requiredMm);
  return {
    source: `the bundle "${bundle.name}" of the project; the rule: ${required.use.rule.source}`,
    ownReason: `both run in the bundle "${bundle.name}", tied together ${required.requiredMm > 0 ? `${asked} apart` : 'touching'}`,
  };
}
