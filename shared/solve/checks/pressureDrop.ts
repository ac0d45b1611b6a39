import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { percentText, pressureText } from '../../document/wording/quantityText.ts';
import { pumpSide } from '../character/characterOf.ts';
import { flowOf } from '../flow/flowOf.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** What the wanted flow loses in the hose and its ends over the working pressure: the likely drop, with its band told. Suction and drains have checks of their own. */
export function pressureDrop({ project, run, lay }: CheckContext): Finding[] {
  const { purpose, pressureKpa } = run.run.service;
  const flow = flowOf(run, lay);
  const ownCheck = pumpSide(run) !== undefined || purpose === 'turbo-oil-drain' || purpose === 'breather';
  if (flow === undefined || ownCheck || pressureKpa <= 0) return [];
  const use = ruleValue(project, 'pressure-drop-share', run.run.id);
  const { low, likely, high } = flow.dropKpa;
  const smooth =
    flow.smoothBoreKpa === undefined
      ? ''
      : ` A smooth bore of the same size would lose ${pressureText(flow.smoothBoreKpa)}.`;
  return judge({
    check: 'pressureDrop',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: likely / pressureKpa,
    unit: 'ratio',
    severity: 'note',
    message: `Hose and ends lose about ${pressureText(likely)} of ${pressureText(pressureKpa)} (between ${pressureText(low)} and ${pressureText(high)}), ${percentText(likely / pressureKpa)}; ${percentText(use.value)} is let pass.${smooth}`,
    mend: 'A larger or shorter hose, straighter ends.',
  });
}
