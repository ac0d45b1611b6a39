import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { centrelineMinRadiusMm } from '../../document/parts/centrelineMinRadius.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText, percentText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/**
 * The least centreline radius, mm, as proven along the whole lay, against the hose's own limit brought to the
 * centreline. The limit is the hose maker's and takes no override; another figure belongs in the table of hoses. Short
 * of it by no more than the accuracy of the lay's own curvature (0.1 %) is a note.
 */
export function bendRadius({ project, run, lay }: CheckContext): Finding[] {
  const { hose } = run;
  const use = ruleValue(project, 'bend-radius', run.run.id);
  const limit = centrelineMinRadiusMm(hose) * use.value;
  const measured = lay.minRadius.provenAtLeastMm;
  const { at } = lay.minRadius;
  const within = measured >= limit * (1 - RADIUS_RELATIVE);
  const accuracy = within ? ` That is as near as the lay's curvature is known, ${percentText(RADIUS_RELATIVE)}.` : '';
  return judge({
    check: 'bendRadius',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit,
    measured,
    unit: 'mm',
    severity: within ? 'note' : 'stop',
    at,
    source: `${hose.source}; measured to the ${hose.minBendRadiusDatum === 'inside' ? 'inside of the bend' : 'centreline'}`,
    message: `Bends to ${bothWays(measured, hose.outsideDiameterMm)} ${placeText(at)}; the hose allows ${bothWays(limit, hose.outsideDiameterMm)}.${accuracy}`,
    mend: 'Give it more room: another end angle, a longer hose, or a waypoint that opens the bend.',
  });
}

function bothWays(centrelineMm: number, outsideDiameterMm: number): string {
  return `${lengthText(centrelineMm)} at the centreline, ${lengthText(centrelineMm - outsideDiameterMm / 2)} inside`;
}
