import { clampedEnds } from '../../document/assembly/hoseClampSteps.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { monthsBetween } from '../../document/life/months.ts';
import type { ProofRecord } from '../../document/project/schema.ts';
import { proofTest } from '../../document/proof/proofTest.ts';
import { clockRefusal, clocksApartDeg, provedClockDeg } from '../../document/proof/reclocked.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';

/**
 * The proof test as it was written down: passed, with pressure enough, its ends not turned since, and not too old when the hose is fitted:
 * to the day it was fitted, or, while it lies on the shelf, to today.
 */
export function proof(context: CheckContext): Finding[] {
  const record = context.run.run.asBuilt?.proof;
  if (record === undefined) return [];
  return [passed, highEnough, notTurned, freshEnough].flatMap((look) => look(context, record));
}

function told({ project, run }: CheckContext, rule: string) {
  return {
    check: 'proof',
    run: run.run.id,
    use: ruleValue(project, rule, run.run.id),
  } as const satisfies Partial<Comparison>;
}

function passed(context: CheckContext, { on, failed = false }: ProofRecord): Finding[] {
  return judge({
    ...told(context, 'proof-passed'),
    sense: 'at-most',
    measured: failed ? 1 : 0,
    unit: 'count',
    severity: 'stop',
    message: `It leaked, or an end moved, in its proof test on ${on}: it is not fitted.`,
    mend: 'A new hose; cut this one up, so that nobody fits it.',
  });
}

/** Hose clamps hold no proof pressure, so none is asked of them. */
function highEnough(context: CheckContext, { on, pressureKpa }: ProofRecord): Finding[] {
  if (clampedEnds(context.run).length > 0) return [];
  const { weakest, byMaker, pressureKpa: makersKpa } = proofTest(context.run);
  const { use, ...head } = told(context, 'proof-multiple');
  const limit = byMaker ? makersKpa : use.value * weakest.maxPressureKpa;
  return judge({
    ...head,
    use,
    sense: 'at-least',
    limit,
    ruleLimit: byMaker ? makersKpa : use.rule.value * weakest.maxPressureKpa,
    measured: pressureKpa,
    unit: 'kPa',
    severity: 'look',
    message: `It was tested to ${pressureText(pressureKpa)} on ${on}; ${pressureText(limit)} is asked for, with ${pressureText(weakest.maxPressureKpa)} of ${weakest.part} the weakest part known.`,
    mend: 'Test it again, with liquid, to the pressure that the makers of hose and ends state.',
    ...(byMaker ? { source: context.run.hose.source } : {}),
  });
}

function notTurned(context: CheckContext): Finding[] {
  const { asBuilt } = context.run.run;
  const { clock } = context.lay;
  const provedDeg = provedClockDeg(asBuilt);
  if (provedDeg === undefined) return [];
  const nowDeg = asBuilt?.clockDeg ?? provedDeg;
  const turned = judge({
    ...told(context, 'proof-clock'),
    sense: 'at-most',
    measured: clockRefusal(asBuilt, nowDeg) === undefined ? 0 : clocksApartDeg(nowDeg, provedDeg),
    unit: 'deg',
    severity: 'stop',
    message: clockRefusal(asBuilt, nowDeg) ?? '',
    mend: 'A new hose, clocked before its proof test.',
  });
  if (turned.length > 0 || clock.kind === 'free') return turned;
  const apartDeg = clocksApartDeg(clock.deg, provedDeg);
  return judge({
    ...told(context, 'proof-clock'),
    sense: 'at-most',
    limit: clock.toleranceDeg,
    measured: apartDeg,
    unit: 'deg',
    severity: 'note',
    message: `The plan now has another clock. ${clockRefusal(asBuilt, clock.deg) ?? ''}`,
    mend: 'See whether the hose fits as it was made; if it does not, a new one.',
  });
}

function freshEnough(context: CheckContext, { on }: ProofRecord): Finding[] {
  const { fittedOn } = context.run.run.asBuilt ?? {};
  const fitted = fittedOn ?? context.today;
  if (fitted === undefined) return [];
  const { use, ...head } = told(context, 'proof-age');
  const when = fittedOn === undefined ? `and is not fitted yet on ${fitted}` : `and was fitted on ${fittedOn}`;
  return judge({
    ...head,
    use,
    sense: 'at-most',
    measured: monthsBetween(on, fitted),
    unit: 'months',
    severity: 'look',
    message: `It was proof-tested on ${on} ${when}: over ${use.value} months on the shelf it is tested again before it goes in.`,
    mend: 'Test it again, and write the new day on its tag.',
  });
}
