import type { Finding, Severity } from '../../document/lay/schema.ts';
import type { Fluid } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText, speedText } from '../../document/wording/quantityText.ts';
import { FLUID_WORDS } from '../../document/wording/serviceWords.ts';
import { meanSpeedMPerS } from '../flow/meanSpeed.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * Fuels that charge an insulating bore. Petrol and avgas conduct far under the rule's 1e-7 S/m and forbid cutting; diesel
 * too, but lights less readily; alcohols conduct above it when pure, which a tank seldom is (conductivities from memory).
 */
const CHARGING: Partial<Record<Fluid, Severity>> = {
  petrol: 'stop',
  avgas: 'stop',
  diesel: 'look',
  e85: 'look',
  methanol: 'look',
};

/** ohm. What makers of anti-static hose test it to, from the bore to an end: EN ISO 8031, as quoted at gaytri.com. */
export const ANTI_STATIC_OHM = 1e8;

/**
 * Fuel in a PTFE core that is not marked conductive: static charge pierces the wall, and the leak is fuel. Speed makes the charge; no
 * speed was found under which an insulating bore is let pass, so it is told and lowers nothing.
 */
export function staticCharge({ project, run }: CheckContext): Finding[] {
  const { hose } = run;
  const { fluid } = run.run.service;
  const severity = CHARGING[fluid];
  const ptfe = hose.core === 'ptfe-smooth' || hose.core === 'ptfe-convoluted';
  if (severity === undefined || !ptfe) return [];
  return judge({
    check: 'staticCharge',
    run: run.run.id,
    use: ruleValue(project, 'static-conductivity', run.run.id),
    sense: 'at-least',
    limit: 1,
    measured: hose.conductiveCore === true ? 1 : 0,
    unit: 'conductive core (1 = marked so)',
    severity,
    message: `${FLUID_WORDS[fluid]} in a PTFE core that is not marked conductive: charge builds up in the bore and can pierce it.${speedOf(run)}`,
    mend: `A hose whose core is marked conductive or anti-static: its maker tests it to less than ${ANTI_STATIC_OHM / 1e6} megohm from bore to end, and asks for one end to be earthed.`,
  });
}

function speedOf({ run, hose }: CheckContext['run']): string {
  const { flowLPerMin } = run.service;
  if (!flowLPerMin) return ' The faster it runs, and after a filter, the more.';
  const speed = speedText(meanSpeedMPerS(flowLPerMin, hose.insideDiameterMm));
  return ` It runs at ${speed} in a bore of ${lengthText(hose.insideDiameterMm)}; the faster, and after a filter, the more, and no speed was found under which it is safe.`;
}
