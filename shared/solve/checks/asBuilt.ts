import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { BuiltPose, Finding, Lay, Severity } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckName } from '../../document/wording/findingWords.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { SIDES, sideText } from './places.ts';
import { thingText } from './skins.ts';
import { slackOrLackMm, tightnessText } from './tightness.ts';

/**
 * The hose as the bench measured it, fitted to the ports of its plan: it may not go tight, bend under its radius, come nearer
 * than asked or have an end stand in the bay (stop), and is looked at where it is wrung or no lay at rest was found.
 */
export function asBuilt(context: CheckContext): Finding[] {
  const { built } = context.lay;
  if (built === undefined) return [];
  const clocked = built.clockDeg === undefined ? '' : `, clock ${degreesText(built.clockDeg)}`;
  return judgeBuilt(context, built, {
    check: 'asBuilt',
    severity: 'stop',
    head: `As measured, cut ${lengthText(built.cutLengthMm)}${clocked},`,
    mend:
      context.run.run.asBuilt?.proof === undefined
        ? 'Make it anew to the plan. Before its proof test an end may still be clocked again where its maker allows that; after it never.'
        : 'Make it anew to the plan: this one has had its proof test, and its ends are not clocked again.',
  });
}

/** What an error within the tolerances of cut and clock does: the worst that any of them breaks, which is to be looked at before the saw is set. */
export function tolerance(context: CheckContext): Finding[] {
  return (context.lay.tolerance?.poses ?? []).flatMap((pose) =>
    judgeBuilt(context, pose, {
      check: 'tolerance',
      severity: 'look',
      head: `Within its tolerance, ${pose.name},`,
      mend: `${toleranceMend(pose, context.lay)}, or hold it to a closer tolerance than the table and measure before the second end goes on.`,
    }),
  );
}

/** What helps against a hose that came out short, long, or at another clock. */
function toleranceMend(pose: BuiltPose, { cutLengthMm }: Lay): string {
  if (pose.cutLengthMm < cutLengthMm) return 'Give it more slack';
  if (pose.cutLengthMm > cutLengthMm)
    return 'Cut it to the short side, give it more room (another end angle, a smaller hose)';
  return 'Set the clock with a protractor';
}

interface Told {
  readonly check: CheckName;
  readonly severity: Severity;
  /** which hose is spoken of, up to where the sentence goes on with what it does */
  readonly head: string;
  readonly mend: string;
}

/** What a hose made so breaks. */
function judgeBuilt(context: CheckContext, pose: BuiltPose, told: Told): Finding[] {
  return [goesTight, bendsTight, comesNear, standsIn, isWrung, findsNoRest].flatMap((look) =>
    look(context, pose, told),
  );
}

function goesTight({ project, run }: CheckContext, pose: BuiltPose, { head, ...told }: Told): Finding[] {
  const use = ruleValue(project, 'built-slack', run.run.id);
  return judge({
    ...told,
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: slackOrLackMm(pose),
    unit: 'mm',
    message: `${head} ${tightnessText(pose)}`,
  });
}

function bendsTight({ project, run, lay }: CheckContext, { minRadius }: BuiltPose, { head, ...told }: Told): Finding[] {
  const use = ruleValue(project, 'built-fits', run.run.id);
  if (minRadius === undefined) return [];
  const limit = lay.minRadius.limitMm * use.value;
  const least = minRadius.provenAtLeastMm;
  // As near as the curvature of a lay is known counts as kept, as in the lay itself: to the project's limit and to the rule's.
  const kept = [limit, lay.minRadius.limitMm * use.rule.value].filter((mm) => least >= mm * (1 - RADIUS_RELATIVE));
  return judge({
    ...told,
    run: run.run.id,
    use,
    sense: 'at-least',
    limit,
    ruleLimit: lay.minRadius.limitMm * use.rule.value,
    measured: Math.max(least, ...kept),
    unit: 'mm',
    at: minRadius.at,
    message: `${head} it bends to ${lengthText(least)} at the centreline; ${lengthText(limit)} is asked for.`,
  });
}

function comesNear({ project, run }: CheckContext, { tightest }: BuiltPose, { head, ...told }: Told): Finding[] {
  if (tightest === undefined) return [];
  const use = ruleValue(project, 'built-fits', run.run.id);
  const limit = tightest.requiredMm * use.value;
  return judge({
    ...told,
    run: run.run.id,
    use,
    sense: 'at-least',
    limit,
    ruleLimit: tightest.requiredMm * use.rule.value,
    measured: tightest.clearanceMm,
    unit: 'mm',
    at: tightest.at,
    with: tightest.to,
    message: `${head} it comes within ${lengthText(tightest.clearanceMm)} of ${thingText(project, tightest)}; ${lengthText(limit)} is asked for.`,
  });
}

function standsIn({ project, run }: CheckContext, { room }: BuiltPose, { head, ...told }: Told): Finding[] {
  return SIDES.flatMap((side) => {
    const least = room[side];
    if (least === undefined) return [];
    return judge({
      ...told,
      run: run.run.id,
      use: ruleValue(project, 'end-room', run.run.id),
      sense: 'at-least',
      limit: 0,
      measured: least.roomMm,
      unit: 'mm',
      message: `${head} ${sideText(side)} stands ${lengthText(-least.roomMm)} in ${least.part}.`,
    });
  });
}

function isWrung({ project, run }: CheckContext, { twistDeg = 0 }: BuiltPose, { head, ...told }: Told): Finding[] {
  const use = ruleValue(project, 'built-twist', run.run.id);
  const measured = Math.abs(twistDeg);
  return judge({
    ...told,
    severity: 'look',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured,
    unit: 'deg',
    message: `${head} it is wrung by ${degreesText(measured)} when its ends are tight; up to ${degreesText(use.value)} is let pass, none is best.`,
  });
}

function findsNoRest({ project, run }: CheckContext, { outcome }: BuiltPose, { head, ...told }: Told): Finding[] {
  if (outcome !== 'unsettled') return [];
  const use = ruleValue(project, 'built-fits', run.run.id);
  return judge({
    ...told,
    severity: 'look',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: use.value,
    measured: 0,
    unit: 'ratio',
    message: `${head} no lay at rest was found for it.`,
  });
}
