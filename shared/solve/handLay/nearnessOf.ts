import { triple } from '../../base/vec3.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { type LeastAlong, leastAlong } from '../../geometry/curveLimits.ts';
import { askedDistanceMm, MarginOf, type RunField } from '../bay/runField.ts';
import type { Neighbour } from '../layRun/neighbours.ts';
import { heldPlaces, type RunSetting } from '../layRun/runSetting.ts';
import type { Nearness } from './handShapeOf.ts';

/** mm. How far the least margin may lie below the one found while the hose is in the hand. */
const PROOF_MM = 0.5;
/** mm. How far to either side of the found place the true least is looked for. */
const ASIDE_MM = 4;
/** Steps of that look: each takes 0.618 of what is left. */
const STEPS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The tightest place of the live hose against everything that the run keeps from: exact distance to the mesh and to the other
 * hoses at its place, which is the least to 0.01 mm near by, and nowhere along the hose further under by more than half
 * a millimetre (that is what `provenAtLeastMm` says). One pass for all things, led by the coarse grids.
 */
export function nearnessOf(
  setting: RunSetting,
  field: RunField,
  neighbours: readonly Neighbour[],
  curve: CubicCurve,
): Nearness {
  const from = setting.a.end.shoulderToMouthMm;
  const to = curveLengthMm(curve) - setting.b.end.shoulderToMouthMm;
  const least = leastAlong(curve, from, to, new MarginOf(field), field.lipschitz, PROOF_MM);
  const { at, marginMm } = refined(curve, field, least, from, to);
  const { point } = curveAt(curve, at);
  const held = heldPlaces(setting);
  const radius = setting.outsideRadiusMm;
  let worst: { to: Neighbour; distanceMm: number; askedMm: number } | undefined;
  for (const neighbour of neighbours) {
    const askedMm = askedDistanceMm(radius + neighbour.requiredMm, held, point);
    const most = worst === undefined ? Number.POSITIVE_INFINITY : worst.distanceMm - worst.askedMm;
    const distanceMm = neighbour.distanceTo(point, askedMm + most);
    if (distanceMm - askedMm < most) worst = { to: neighbour, distanceMm, askedMm };
  }
  if (worst === undefined) return { marginMm, outsideScan: marginMm < 0 };
  const own = worst.distanceMm - worst.askedMm;
  const { thing, onThing } = worst.to.describe(point);
  const clearanceMm = worst.distanceMm - radius;
  return {
    marginMm,
    outsideScan: marginMm < 0 && own > marginMm + PROOF_MM,
    tightest: {
      to: thing,
      clearanceMm,
      provenAtLeastMm: clearanceMm - Math.max(0, own - Math.min(own, least.provenAtLeast)),
      requiredMm: worst.askedMm - radius,
      at: { arcLengthMm: at, point: triple(point) },
      onThing: triple(onThing),
    },
  };
}

/** The least margin within ASIDE_MM of a place, by golden section. */
function refined(
  curve: CubicCurve,
  field: RunField,
  { arcLengthMm: around, found }: LeastAlong,
  from: number,
  to: number,
): { at: number; marginMm: number } {
  const upTo = found + 2 * field.lipschitz * ASIDE_MM;
  const margin = (s: number): number => {
    const [x, y, z] = curveAt(curve, s).point;
    return field.marginMm(x, y, z, upTo);
  };
  let low = Math.max(from, around - ASIDE_MM);
  let high = Math.min(to, around + ASIDE_MM);
  let best = { at: around, marginMm: margin(around) };
  let [s, t] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [ms, mt] = [margin(s), margin(t)];
  for (let i = 0; i < STEPS; i++) {
    if (ms < mt) {
      [high, t, mt] = [t, s, ms];
      s = high - GOLDEN * (high - low);
      ms = margin(s);
    } else {
      [low, s, ms] = [s, t, mt];
      t = low + GOLDEN * (high - low);
      mt = margin(t);
    }
  }
  if (ms < best.marginMm) best = { at: s, marginMm: ms };
  if (mt < best.marginMm) best = { at: t, marginMm: mt };
  return best;
}
