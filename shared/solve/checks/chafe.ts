import type { Clearance, Finding, RockExtreme } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import { isBareBraid, isSawedByBraid } from '../../document/project/sawedByBraid.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { lengthText, temperatureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { bundleLimit } from './clearance.ts';
import { type Comparison, judge } from './judge.ts';
import { placeText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';

/**
 * Bare steel braid within reach of what is softer than it (composite, wiring, parts stated to be aluminium, plastic or rubber) or of
 * another hose: it cuts what it rubs. Looked at within reach, and no cutting where it touches; so at the extremes of the
 * bodies' motion, where reach is only what shakes on top. That both may be on one body lowers nothing: an engine shakes its own
 * hoses too. A sleeve or another cover ends it.
 */
export function chafe(context: CheckContext): Finding[] {
  const { run, lay, project } = context;
  if (!isBareBraid(run)) return [];
  const atRest = lay.clearances.flatMap((c) => {
    if (c.to.kind === 'run') return onHose(context, c);
    const skin = skinOfClearance(project, c);
    return skin !== undefined && isSawedByBraid(skin) ? onSofter(context, c) : [];
  });
  return [...atRest, ...atExtremes(context, atRest)];
}

function onSofter(context: CheckContext, c: Clearance): Finding[] {
  const { project, run } = context;
  const use = ruleValue(project, 'chafe-reach', run.run.id);
  return judge({
    ...rub(context, c),
    use,
    limit: use.value + project.bay.scanUncertaintyMm,
    ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
    severity: c.provenAtLeastMm <= project.bay.scanUncertaintyMm ? 'stop' : 'look',
    mend: `A sleeve, a stand-off clamp, a grommet where it passes through${polyesterMend(context)}`,
  });
}

function onHose(context: CheckContext, c: Clearance): Finding[] {
  const { project, run } = context;
  const required = requiredRunClearance(project, run.run.id, c.to.id);
  const { use, requiredMm } = required;
  const bundle = bundleOf(project, run.run.id, c.to.id);
  return judge({
    ...rub(context, c),
    use,
    limit: requiredMm,
    ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
    severity: 'look',
    ...(bundle === undefined ? {} : bundleLimit(required, bundle)),
    mend: `Clamp the two together with a separator, or a sleeve on one of them${polyesterMend(context)}`,
  });
}

/** Of each thing the extreme at which the braid comes nearest, unless it is said at rest as gravely already. */
function atExtremes(context: CheckContext, atRest: readonly Finding[]): Finding[] {
  const { project, run, lay } = context;
  const nearest = new Map<string, { readonly extreme: RockExtreme; readonly c: Clearance }>();
  for (const extreme of lay.rock?.extremes ?? [])
    for (const c of extreme.pose.bodies.length === 0 ? [] : (extreme.rubs ?? [])) {
      const key = `${c.to.kind} ${c.to.id}`;
      const known = nearest.get(key);
      if (known === undefined || c.clearanceMm < known.c.clearanceMm) nearest.set(key, { extreme, c });
    }
  const use = ruleValue(project, 'chafe-rock', run.run.id);
  return [...nearest.values()].flatMap(({ extreme, c }): Finding[] => {
    const isHose = c.to.kind === 'run';
    if (isHose && bundleOf(project, run.run.id, c.to.id) !== undefined) return [];
    const severity = c.clearanceMm <= project.bay.scanUncertaintyMm && !isHose ? 'stop' : 'look';
    const said = atRest.find((f) => f.with?.kind === c.to.kind && f.with.id === c.to.id && f.severity !== 'note');
    if (said !== undefined && (said.severity === 'stop' || severity === 'look')) return [];
    const near = c.clearanceMm <= 0 ? 'touches' : `comes within ${lengthText(c.clearanceMm)} of`;
    return judge({
      ...rub(context, c),
      use,
      limit: use.value + project.bay.scanUncertaintyMm,
      ruleLimit: use.rule.value + project.bay.scanUncertaintyMm,
      measured: c.clearanceMm,
      severity,
      message: `With ${extreme.pose.name} bare steel braid ${near} ${thingText(project, c)}, ${placeText(c.at)}: it saws.`,
      mend: `A sleeve, or a stand-off clamp that holds it away there${polyesterMend(context)}`,
    });
  });
}

/** Polyester braid does not saw, and bears less heat: its limit, and whether the estimate is past it. */
function polyesterMend({ project, run, lay }: CheckContext): string {
  const { value } = ruleValue(project, 'heat-cover-polyester', run.run.id);
  const { heat } = lay;
  const hottestC =
    heat === undefined ? undefined : Math.max(heat.running.hottest.cover.likely, heat.soak.hottest.cover.likely);
  if (hottestC !== undefined && hottestC > value)
    return `. Polyester braid does not help here: it bears ${temperatureText(value)}, and ${temperatureText(hottestC)} is estimated on this hose.`;
  return `, or the same hose with polyester braid, which bears ${temperatureText(value)} (from memory).`;
}

function rub(
  { project, run }: CheckContext,
  c: Clearance,
): Pick<Comparison, 'check' | 'run' | 'sense' | 'measured' | 'unit' | 'at' | 'with' | 'message'> {
  return {
    check: 'chafe',
    run: run.run.id,
    sense: 'at-least',
    measured: c.provenAtLeastMm,
    unit: 'mm',
    at: c.at,
    with: c.to,
    message: `Bare steel braid ${lengthText(c.provenAtLeastMm)} from ${thingText(project, c)}, ${placeText(c.at)}: within reach it saws.`,
  };
}
