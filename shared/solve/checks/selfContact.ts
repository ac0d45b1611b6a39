import type { Finding, Lay, Place } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { nearestPass, type Pass } from '../../geometry/nearestPass.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/**
 * A hose against itself: the distance, mm, surface to surface, that is proven between stretches of it that pass each other.
 * Stretches nearer along it than half a turn at the least radius it is let have cannot meet: they are a bend, not a pass.
 */
export function selfContact({ project, run, lay }: CheckContext): Finding[] {
  const { points, arcLengthMm } = lay.centreline;
  const pass = nearestPass(points, arcLengthMm, Math.PI * lay.minRadius.limitMm);
  if (pass === undefined) return [];
  const use = ruleValue(project, 'self-contact', run.run.id);
  const provenMm = pass.distance - lay.outsideDiameterMm - 2 * sagMm(lay);
  const [at, other] = [placeOf(pass.here), placeOf(pass.there)];
  return judge({
    check: 'selfContact',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: provenMm,
    unit: 'mm',
    severity: 'stop',
    at,
    message:
      provenMm < 0
        ? `Passes through itself: it would share ${lengthText(-provenMm)} of room, ${placeText(at)} and ${placeText(other)}.`
        : `Passes itself ${lengthText(provenMm)} away, ${placeText(at)} and ${placeText(other)}.`,
    mend: 'A clamp that parts the two stretches, or another way.',
  });
}

/** mm. How far the hose can lie off the straight line between two stored places of it: s^2 / 8R at its proven least radius. */
function sagMm(lay: Lay): number {
  const { arcLengthMm } = lay.centreline;
  const longest = arcLengthMm.reduce((most, s, i) => Math.max(most, s - (arcLengthMm[i - 1] ?? s)), 0);
  return longest ** 2 / (8 * lay.minRadius.provenAtLeastMm);
}

function placeOf({ along, point }: Pass['here']): Place {
  return { arcLengthMm: along, point: [point[0], point[1], point[2]] };
}
