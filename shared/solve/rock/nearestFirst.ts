import { distance, type Vec3 } from '../../base/vec3.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { HELD_SLOPE } from '../bay/runField.ts';
import type { Neighbour } from '../layRun/neighbours.ts';
import { heldPlaces, type RunSetting } from '../layRun/runSetting.ts';

/** mm. Spacing of the places looked at. */
const LOOK_STEP_MM = 10;
/** mm. Between two places what is over, which changes by at most 1 + HELD_SLOPE mm a mm, is less by no more than this. */
const BETWEEN_MM = (LOOK_STEP_MM / 2) * (1 + HELD_SLOPE);

/** A thing near a hose, and a bound: the clearance to it is nowhere less than this over what is asked, mm. */
export interface Looked {
  readonly neighbour: Neighbour;
  readonly leastMm: number;
}

/**
 * Things in the order in which they come near to a hose, by what the clearance has over what is asked, each with a lower
 * bound of that: exact distances at places 10 mm apart, less what may be between. Things that are further than the nearest by
 * more than the bounds can be wrong keep the bound at which looking at them stopped.
 */
export function nearestFirst(setting: RunSetting, curve: CubicCurve, neighbours: readonly Neighbour[]): Looked[] {
  const places = placesAlong(setting, curve);
  let nearestMm = Number.POSITIVE_INFINITY;
  const looked = neighbours.map((neighbour): Looked => {
    const wholeMm = setting.outsideRadiusMm + neighbour.requiredMm;
    let leastMm = nearestMm + 2 * BETWEEN_MM;
    for (const { point, heldMm } of places) {
      const asked = Math.min(wholeMm, HELD_SLOPE * heldMm);
      leastMm = Math.min(leastMm, neighbour.distanceTo(point, asked + leastMm) - asked);
    }
    nearestMm = Math.min(nearestMm, leastMm);
    return { neighbour, leastMm: leastMm - BETWEEN_MM };
  });
  return looked.sort((p, q) => p.leastMm - q.leastMm);
}

function placesAlong(setting: RunSetting, curve: CubicCurve): { readonly point: Vec3; readonly heldMm: number }[] {
  const held = heldPlaces(setting);
  const fromMm = setting.a.end.shoulderToMouthMm;
  const liveMm = curveLengthMm(curve) - setting.b.end.shoulderToMouthMm - fromMm;
  const steps = Math.max(1, Math.ceil(liveMm / LOOK_STEP_MM));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const { point } = curveAt(curve, fromMm + (liveMm * i) / steps);
    return { point, heldMm: Math.min(...held.map((place) => distance(point, place))) };
  });
}
