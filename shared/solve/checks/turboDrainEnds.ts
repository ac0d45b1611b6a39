import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { narrowestBore } from './narrowestBore.ts';
import { SIDES, sideText } from './places.ts';
import { higherSide } from './profile.ts';

/** Angled ends, too small a size and a bore under the housing's own on a turbo oil drain: they slow oil that only gravity moves. */
export function turboDrainEnds(context: CheckContext): Finding[] {
  const { project, run } = context;
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
    measured: run.hose.dash,
    unit: 'dash',
    severity: 'look',
    message: `A -${run.hose.dash} drain; -${dash.value} is the least that turbo makers ask for, and never a bore under the housing's drain hole.`,
    mend: 'A larger hose with its ends.',
  });
  return [...ends, ...size, ...narrowBore(context)];
}

/** The narrowest of hose and ends, over the hole in the housing that the oil comes out of, where its port states it. */
function narrowBore({ project, run, lay }: CheckContext): Finding[] {
  const { port, stack } = run[higherSide(lay)];
  const { boreMm } = stack?.bare ?? port;
  if (boreMm === undefined) return [];
  const narrowest = narrowestBore(run);
  const use = ruleValue(project, 'drain-bore', run.run.id);
  return judge({
    check: 'turboDrainEnds',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: narrowest / boreMm,
    unit: 'ratio',
    severity: 'look',
    message: `The drain is ${lengthText(narrowest)} wide at its narrowest; the hole it comes from is ${lengthText(boreMm)}.`,
    mend: 'A larger hose with its ends.',
  });
}
