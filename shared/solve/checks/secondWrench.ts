import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, SIDES, sideText } from './places.ts';

/**
 * Whether what a nut is screwed on can be held with a second wrench while the nut is turned. Looked at where the project
 * has an adapter there with its hex; what a bare port is, a union or a thread in the part, is not known, and nothing is said.
 */
export function secondWrench({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'second-wrench', run.run.id);
  return SIDES.flatMap((side) => {
    const nut = lay.hands?.[side];
    if (nut?.second === undefined || nut.second.assumed) return [];
    const { hexMm, fits, holdDeg } = nut.second;
    const room =
      holdDeg === undefined
        ? 'has no room for a second wrench'
        : 'can be held only where two hands are in each other’s way';
    return judge({
      check: 'secondWrench',
      run: run.run.id,
      use,
      sense: 'at-least',
      measured: fits ? 1 : 0,
      unit: 'count',
      severity: 'look',
      at: mouthPlace(lay, side),
      message: `The adapter under ${sideText(side)}, ${hexMm.toFixed(1)} mm across flats, ${room} while its nut is turned.`,
      mend: 'Hold it with a crow-foot or a thin wrench, tighten it on the bench, or turn the adapter’s hex to where there is room.',
    });
  });
}
