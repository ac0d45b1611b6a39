import { radiansToDegrees } from '../../base/units.ts';
import { angleBetween, sub } from '../../base/vec3.ts';
import type { Finding, Lay, LaySupport, Place } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeAt, placeText } from './places.ts';

/** mm. Width of a clamp of which no table says it: common practice, no source. */
const USUAL_WIDTH_MM = 15;

/** Clamps that sit on a bend: how far the hose turns within the width of each, degrees. */
export function clampPlace({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'clamp-on-bend', run.run.id);
  return lay.supports
    .filter(({ kind }) => kind === 'clamp')
    .flatMap((support) => {
      const widthMm = run.clamps?.find((c) => c.support === support.id)?.clamp.widthMm ?? USUAL_WIDTH_MM;
      const turned = turnedDeg(lay, support, widthMm);
      return judge({
        check: 'clampPlace',
        run: run.run.id,
        use,
        sense: 'at-most',
        measured: turned,
        unit: 'deg',
        severity: support.proposed ? 'note' : 'look',
        at: support.at,
        message: `The clamp ${placeText(support.at)} sits on a bend: within it the hose turns by ${degreesText(turned)}.`,
        mend: 'Slide it to a straight stretch near by.',
      });
    });
}

function turnedDeg(lay: Lay, { at }: LaySupport, widthMm: number): number {
  const place = (mm: number): Place['point'] => placeAt(lay, at.arcLengthMm + mm).point;
  const half = widthMm / 2;
  const before = sub(place(0), place(-half));
  const after = sub(place(half), place(0));
  // Two chords of half the width turn by half of what the curve does over the whole.
  return 2 * radiansToDegrees(angleBetween(before, after));
}
