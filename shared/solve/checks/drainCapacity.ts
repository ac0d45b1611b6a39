import { degreesToRadians } from '../../base/units.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, flowText } from '../../document/wording/quantityText.ts';
import { corrugatedFactor } from '../flow/corrugatedLoss.ts';
import { gravityFlowLPerMin } from '../flow/drainFlow.ts';
import { pitchOf } from '../flow/flowOf.ts';
import { fluidState } from '../flow/fluidState.ts';
import { boreRoughness } from '../flow/lineLoss.ts';
import type { CheckContext } from './check.ts';
import { shallowest } from './drainFall.ts';
import { judge } from './judge.ts';
import { narrowestBore } from './narrowestBore.ts';
import { flowDown } from './profile.ts';

/**
 * What a drain carries half full at its flattest place, by its fall alone, over the flow it has to take; judged with the oil at
 * its thickest and the bore at its roughest in their bands, a corrugated bore with its own friction. An estimate. No answer where it does not fall: that is said by the check of its fall.
 */
export function drainCapacity({ project, run, lay }: CheckContext): Finding[] {
  const { service } = run.run;
  const fluid = fluidState(service);
  if (service.purpose !== 'turbo-oil-drain' || fluid === undefined || !service.flowLPerMin) return [];
  const flattest = shallowest(flowDown(lay));
  if (flattest === undefined || flattest.fallDeg <= 0) return [];
  const use = ruleValue(project, 'drain-capacity', run.run.id);
  const bore = narrowestBore(run);
  const sine = Math.sin(degreesToRadians(flattest.fallDeg));
  const pitch = pitchOf(run.hose);
  const least = pitch === undefined ? 0 : corrugatedFactor(pitch / run.hose.insideDiameterMm);
  const rough = boreRoughness(run.hose.core);
  const viscosity = fluid.viscosityMm2PerS;
  const carried = (mm2PerS: number, roughMm: number): number =>
    gravityFlowLPerMin(bore, sine, mm2PerS, roughMm, least) / 2;
  const [low, high] = [carried(viscosity.high, rough.high), carried(viscosity.low, rough.low)];
  const measured = low / service.flowLPerMin;
  return judge({
    check: 'drainCapacity',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured,
    unit: 'ratio',
    severity: 'look',
    at: flattest.at,
    message: `Half full, where it falls least (${degreesText(flattest.fallDeg)}), the drain carries about ${flowText(carried(viscosity.likely, rough.likely))} by its fall alone, between ${flowText(low)} with thick oil and ${flowText(high)} with thin; it has to take ${flowText(service.flowLPerMin)}, and ${use.value} times that is asked for since it comes as froth.`,
    mend: 'A larger drain, or a steeper one.',
  });
}
