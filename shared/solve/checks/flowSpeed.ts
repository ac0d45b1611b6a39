import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText, speedText } from '../../document/wording/quantityText.ts';
import { pumpSide } from '../character/characterOf.ts';
import { flowOf } from '../flow/flowOf.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** The three kinds of oil hose that the bands are published for, with how each is told. */
const BANDS = {
  suction: { rule: 'flow-speed-suction', where: 'on suction' },
  back: { rule: 'flow-speed-return', where: 'on the way back to the tank' },
  pressure: { rule: 'flow-speed-pressure', where: 'under pressure' },
} as const;

/** The speed of the wanted flow in the hose's bore, m/s, of oil: on suction, on its way back, and under pressure. Exact from flow and bore. */
export function flowSpeed({ project, run, lay }: CheckContext): Finding[] {
  const { purpose, fluid, pressureKpa } = run.run.service;
  const flow = flowOf(run, lay);
  const isDrain = purpose === 'turbo-oil-drain' || purpose === 'breather';
  if (flow === undefined || fluid !== 'engine-oil' || isDrain) return [];
  const kind = pumpSide(run) !== undefined ? 'suction' : purpose === 'oil-return' ? 'back' : 'pressure';
  if (kind === 'pressure' && pressureKpa <= 0) return [];
  const { rule, where } = BANDS[kind];
  const use = ruleValue(project, rule, run.run.id);
  return judge({
    check: 'flowSpeed',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: flow.speedMPerS,
    unit: 'm/s',
    severity: 'look',
    message: `The oil runs at ${speedText(flow.speedMPerS)} in a bore of ${lengthText(run.hose.insideDiameterMm)}; up to ${speedText(use.value)} is usual ${where}.`,
    mend: 'A larger hose, with its ends and adapters.',
  });
}
