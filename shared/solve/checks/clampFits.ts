import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/** Clamps of the table that do not hold the outside diameter of this hose, sleeve included. */
export function clampFits({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'clamp-fits', run.run.id);
  return (run.clamps ?? []).flatMap(({ support, clamp }) => {
    const at = lay.supports.find(({ id }) => id === support)?.at;
    const { outsideDiameterMm } = lay;
    const fits = outsideDiameterMm >= clamp.holdsFromMm && outsideDiameterMm <= clamp.holdsToMm;
    return judge({
      check: 'clampFits',
      run: run.run.id,
      use,
      sense: 'at-most',
      measured: fits ? 0 : 1,
      unit: 'count',
      severity: 'look',
      ...(at === undefined ? {} : { at }),
      source: clamp.source,
      message: `The clamp ${clamp.name}${at === undefined ? '' : ` ${placeText(at)}`} holds ${lengthText(clamp.holdsFromMm)} to ${lengthText(clamp.holdsToMm)}; the hose is ${lengthText(outsideDiameterMm)} thick there.`,
      mend: outsideDiameterMm > clamp.holdsToMm ? 'The next larger clamp.' : 'The next smaller clamp.',
    });
  });
}
