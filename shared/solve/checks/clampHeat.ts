import type { HeatTrack } from '../../document/lay/heat.ts';
import type { Finding, Lay, LaySupport } from '../../document/lay/schema.ts';
import type { Clamp } from '../../document/parts/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { temperatureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge, meets } from './judge.ts';
import { nearestIndex, placeText } from './places.ts';

/**
 * Clamps of the table against the estimated temperature of what they hold, deg C, running: over their own limit with the
 * likely value they are looked at, with the hot edge of the estimate alone a note. What radiation does to the clamp's
 * own back is not estimated.
 */
export function clampHeat(context: CheckContext): Finding[] {
  return (context.run.clamps ?? []).flatMap(({ support, clamp }) => {
    const there = context.lay.supports.find(({ id }) => id === support);
    return there === undefined ? [] : judgeClamp(context, clamp, there);
  });
}

function judgeClamp({ project, run, lay }: CheckContext, clamp: Clamp, { at }: LaySupport): Finding[] {
  const heat = hottestThere(lay, at.arcLengthMm);
  if (heat === undefined) return [];
  const use = ruleValue(project, 'clamp-heat', run.run.id);
  const limit = clamp.maxTemperatureC - use.value;
  const likelyOver = !meets('at-most', heat.likely, limit);
  return judge({
    check: 'clampHeat',
    run: run.run.id,
    use,
    sense: 'at-most',
    limit,
    ruleLimit: clamp.maxTemperatureC - use.rule.value,
    measured: likelyOver ? heat.likely : heat.high,
    unit: 'deg C',
    severity: likelyOver ? 'look' : 'note',
    at,
    source: clamp.source,
    message: `Estimated ${temperatureText(heat.likely)}, up to ${temperatureText(heat.high)}, where the clamp ${clamp.name} holds it, ${placeText(at)}; the clamp (${clamp.material}) bears ${temperatureText(clamp.maxTemperatureC)}.`,
    mend: 'A clamp whose cushion bears more, or the clamp further from what heats it.',
  });
}

/** deg C. The outside of hose or sleeve at the place of the estimate nearest to an arc length from shoulder A. */
function hottestThere({ heat }: Lay, atMm: number): { likely: number; high: number } | undefined {
  if (heat === undefined) return undefined;
  const { arcLengthMm, running } = heat;
  const i = nearestIndex(arcLengthMm, atMm);
  const { likely, high }: HeatTrack = running.sleeve ?? running.cover;
  return { likely: likely[i] ?? 0, high: high[i] ?? 0 };
}
