import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { BuiltPose, Finding, Severity } from '../../document/lay/schema.ts';
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
    mend: 'Make it anew to the plan. Before its proof test an end may still be clocked again where its maker allows that; after it never.',
  });
}

/** What an error within the tolerances of cut and clock does: the worst that any of them breaks, which is to be looked at before the saw is set. */
export function tolerance(context: CheckContext): Finding[] {
  return (context.lay.tolerance?.poses ?? []).flatMap((pose) =>
    judgeBuilt(context, pose, {
      check: 'tolerance',
      severity: 'look',
      head: `Within its tolerance, ${pose.name},`,
      mend: 'Give it more slack, or hold it to a closer tolerance than the table and measure before the second end goes on.',
    }),
  );
}

interface Told {
  readonly check: CheckName;
  readonly severity: Severity;
  /** which hose is spoken of, up to where the sentence goes on with what it does */
  readonly head: string;
  readonly mend: string;
}

/** What a hose made so breaks; what the planned one breaks already is said there, not again here. */
function judgeBuilt({ project, run, lay }: CheckContext, pose: BuiltPose, told: Told): Finding[] {
  const { check, severity, head, mend } = told;
  const rule = (id: string) => ruleValue(project, id, run.run.id);
  const shared = { check, run: run.run.id, mend } as const;
  const slack = rule('built-slack');
  const slackMm = slackOrLackMm(pose);
  const tight = judge({
    ...shared,
    use: slack,
    sense: 'at-least',
    limit: slack.value,
    measured: slackMm,
    unit: 'mm',
    severity,
    message: `${head} ${tightnessText(pose)}`,
  });
  const fits = rule('built-fits');
  const limitMm = lay.minRadius.limitMm * fits.value;
  const bend = pose.minRadius;
  const isTight = bend !== undefined && bend.provenAtLeastMm < limitMm * (1 - RADIUS_RELATIVE);
  const bends = isTight
    ? judge({
        ...shared,
        use: fits,
        sense: 'at-least',
        limit: limitMm,
        ruleLimit: lay.minRadius.limitMm * fits.rule.value,
        measured: bend.provenAtLeastMm,
        unit: 'mm',
        severity,
        at: bend.at,
        message: `${head} it bends to ${lengthText(bend.provenAtLeastMm)} at the centreline; ${lengthText(limitMm)} is asked for.`,
      })
    : [];
  const near = pose.tightest;
  const nears =
    near === undefined
      ? []
      : judge({
          ...shared,
          use: fits,
          sense: 'at-least',
          limit: near.requiredMm * fits.value,
          ruleLimit: near.requiredMm * fits.rule.value,
          measured: near.clearanceMm,
          unit: 'mm',
          severity,
          at: near.at,
          with: near.to,
          message: `${head} it comes within ${lengthText(near.clearanceMm)} of ${thingText(project, near)}; ${lengthText(near.requiredMm * fits.value)} is asked for.`,
        });
  const stands = SIDES.flatMap((side) => {
    const room = pose.room[side];
    return room === undefined
      ? []
      : judge({
          ...shared,
          use: rule('built-slack'),
          sense: 'at-least',
          limit: 0,
          measured: room.roomMm,
          unit: 'mm',
          severity,
          message: `${head} ${sideText(side)} stands ${lengthText(-room.roomMm)} in ${room.part}.`,
        });
  });
  return [...tight, ...bends, ...nears, ...stands, ...wrung(), ...restless()];

  function wrung(): Finding[] {
    const use = rule('built-twist');
    const twistDeg = Math.abs(pose.twistDeg ?? 0);
    return judge({
      ...shared,
      use,
      sense: 'at-most',
      limit: use.value,
      ruleLimit: use.rule.value,
      measured: twistDeg,
      unit: 'deg',
      severity: 'look',
      message: `${head} it is wrung by ${degreesText(twistDeg)} when its ends are tight; up to ${degreesText(use.value)} is let pass, none is best.`,
    });
  }

  function restless(): Finding[] {
    return pose.outcome !== 'unsettled'
      ? []
      : judge({
          ...shared,
          use: fits,
          sense: 'at-least',
          limit: fits.value,
          measured: 0,
          unit: 'ratio',
          severity: 'look',
          message: `${head} no lay at rest was found for it.`,
        });
  }
}
