import type { Clearance, Finding } from '../../document/lay/schema.ts';
import type { Skin } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { ownLimit, proofText, severityOfProof } from './clearance.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';

/**
 * Distance to hot skins, scan uncertainty on top: nearer than the rule forbids cutting; a bare hose nearer than the
 * wider distance is looked at, to be sleeved or shielded. A sleeve never lets a hose come nearer than the rule, since it
 * does not raise the hose's own temperature limit (NAVEDTRA 14315). Distance alone is no proof of a cool hose.
 */
export function heatDistance(context: CheckContext): Finding[] {
  return context.lay.clearances.flatMap((c) => {
    const skin = skinOfClearance(context.project, c);
    if (skin?.kind !== 'hot') return [];
    const near = tooNear(context, c, skin);
    return near.some((f) => f.severity === 'stop') || context.run.sleeve !== undefined
      ? near
      : [...near, ...bareNear(context, c, skin)];
  });
}

function tooNear(context: CheckContext, c: Clearance, skin: Skin): Finding[] {
  const { project, run } = context;
  const required = requiredSkinClearance(project, run.run.id, skin);
  return judge({
    ...place(context, c),
    use: required.use,
    limit: required.requiredMm,
    ruleLimit: required.use.rule.value + project.bay.scanUncertaintyMm,
    severity: severityOfProof(c, required.requiredMm),
    message: `${distanceText(context, c, skin)}; ${lengthText(required.requiredMm)} is asked for.${proofText(c, required.requiredMm)}`,
    mend: 'Lead it further away, or move the heat behind a shield and measure again; a sleeve does not raise what the hose can bear.',
    ...ownLimit(required, skin),
  });
}

function bareNear(context: CheckContext, c: Clearance, skin: Skin): Finding[] {
  const { project, run } = context;
  const use = ruleValue(project, 'heat-sleeve-within', run.run.id);
  const limit = use.value + project.bay.scanUncertaintyMm;
  return judge({
    ...place(context, c),
    use,
    limit,
    ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
    severity: 'look',
    message: `${distanceText(context, c, skin)} with no sleeve; nearer than ${lengthText(limit)} it is sleeved or shielded.`,
    mend: 'Put a sleeve on (before the second end goes on), or a metal shield between; both change the clearance.',
  });
}

function place({ run }: CheckContext, c: Clearance) {
  return {
    check: 'heatDistance',
    run: run.run.id,
    sense: 'at-least',
    measured: c.provenAtLeastMm,
    unit: 'mm',
    at: c.at,
    with: c.to,
  } as const;
}

function distanceText({ project }: CheckContext, c: Clearance, skin: Skin): string {
  const degrees = skin.surfaceTemperatureC === undefined ? '' : ` at ${skin.surfaceTemperatureC} deg C`;
  return `${lengthText(c.provenAtLeastMm)} from ${thingText(project, c)}${degrees}, ${placeText(c.at)}`;
}
