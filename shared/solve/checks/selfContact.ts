import { distance } from '../../base/vec3.ts';
import type { Finding, Lay, Place } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/** A hose against itself: the least distance, mm, between stretches of it that pass each other, surface to surface. */
export function selfContact({ project, run, lay }: CheckContext): Finding[] {
  const pass = nearestPass(lay);
  if (pass === undefined) return [];
  const use = ruleValue(project, 'self-contact', run.run.id);
  return judge({
    check: 'selfContact',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: use.value,
    ruleLimit: use.rule.value,
    measured: pass.gapMm - lay.outsideDiameterMm,
    unit: 'mm',
    severity: 'stop',
    at: pass.at,
    message: `Passes itself ${lengthText(pass.gapMm - lay.outsideDiameterMm)} away, ${placeText(pass.at)} and ${placeText(pass.other)}.`,
    mend: 'A clamp that parts the two stretches, or another way.',
  });
}

/**
 * The nearest two places of a centreline that are further apart along it than half a turn at the hose's least radius, so that a bend is
 * not taken for a pass. Between points the line is taken for straight from point to point, less than its sag: off by under
 * s^2 / 4R, 0.1 mm at 4 mm and the tightest hoses.
 */
function nearestPass(lay: Lay): { readonly gapMm: number; readonly at: Place; readonly other: Place } | undefined {
  const { points, arcLengthMm } = lay.centreline;
  const apartMm = Math.PI * lay.minRadius.limitMm;
  let best: { gapMm: number; at: Place; other: Place } | undefined;
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      const along = (arcLengthMm[j] as number) - (arcLengthMm[i] as number);
      if (along < apartMm) continue;
      const [p, q] = [points[i] as Place['point'], points[j] as Place['point']];
      const gapMm = distance(p, q);
      if (best !== undefined && gapMm >= best.gapMm) {
        // No point of the next stretch can be nearer before the line has come that far.
        const skip = Math.floor((gapMm - best.gapMm) / Math.max(1e-9, stepMm(arcLengthMm)));
        j += skip;
        continue;
      }
      best = {
        gapMm,
        at: { arcLengthMm: arcLengthMm[i] as number, point: p },
        other: { arcLengthMm: arcLengthMm[j] as number, point: q },
      };
    }
  }
  return best;
}

function stepMm(arcs: readonly number[]): number {
  return arcs.length < 2 ? 1 : ((arcs[arcs.length - 1] as number) - (arcs[0] as number)) / (arcs.length - 1);
}
