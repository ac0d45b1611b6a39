import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { SIDES, sideText } from './places.ts';

/** Angled ends and too small a size on a turbo oil drain: both slow oil that only gravity moves. */
export function turboDrainEnds({ project, run }: CheckContext): Finding[] {
  if (run.run.service.purpose !== 'turbo-oil-drain') return [];
  const angle = ruleValue(project, 'drain-end-angle', run.run.id);
  const dash = ruleValue(project, 'drain-least-dash', run.run.id);
  const ends = SIDES.flatMap((side) => {
    const { bendAngleDeg } = run[side].end;
    return judge({
      check: 'turboDrainEnds',
      run: run.run.id,
      use: angle,
      sense: 'at-most',
      limit: angle.value,
      ruleLimit: angle.rule.value,
      measured: bendAngleDeg,
      unit: 'deg',
      severity: 'look',
      message: `${sideText(side)} turns the drain by ${degreesText(bendAngleDeg)}; straight ends drain best.`,
      mend: 'A straight end, or an adapter flange whose outlet points the way the hose has to go.',
    });
  });
  const size = judge({
    check: 'turboDrainEnds',
    run: run.run.id,
    use: dash,
    sense: 'at-least',
    limit: dash.value,
    ruleLimit: dash.rule.value,
    measured: run.hose.dash,
    unit: 'dash',
    severity: 'look',
    message: `A -${run.hose.dash} drain; -${dash.value} is the least that turbo makers ask for, and never a bore under the housing's drain hole.`,
    mend: 'A larger hose with its ends.',
  });
  return [...ends, ...size];
}
