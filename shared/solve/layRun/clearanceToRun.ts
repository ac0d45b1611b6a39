import { distance, lerp, type Vec3 } from '../../base/vec3.ts';
import type { Clearance, Lay } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { askedDistanceMm, HELD_SLOPE } from '../bay/runField.ts';
import { buildTubeField, nearestTube, newNearestTube, type Tube } from '../bay/tubeField.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

/** mm. Spacing of the places looked at along the report's centreline. */
const STEP_MM = 0.5;
/** mm. How far the report's centreline, at most 4 mm from point to point, can lie from the curves of both hoses on bends of 40 mm. */
const CHORDS_MM = 0.1;

/**
 * The clearance of a lay to one other run that was laid after it, or moved since: measured on the report's centreline
 * every 0.5 mm, with a proof that counts the half step and the chords. Same rules as when a run is laid: the whole
 * distance away from held places, inside their cones a breach only. Nothing where the runs never leave those cones.
 */
export function clearanceToRun(
  project: Project,
  setting: RunSetting,
  lay: Pick<Lay, 'centreline' | 'cutLengthMm'>,
  run: string,
  tubes: readonly Tube[],
): Clearance | undefined {
  const field = buildTubeField(tubes);
  const { requiredMm } = requiredRunClearance(project, setting.run, run);
  const radius = setting.outsideRadiusMm;
  const held = heldPlaces(setting);
  const near = newNearestTube();
  let worst: { clearance: Clearance; margin: number } | undefined;
  let worseFromMm = Number.NEGATIVE_INFINITY;
  for (const { arcLengthMm, point } of livePlaces(setting, lay)) {
    if (arcLengthMm < worseFromMm) continue;
    if (!nearestTube(field, point[0], point[1], point[2], Number.POSITIVE_INFINITY, near)) return undefined;
    const asked = askedDistanceMm(radius + requiredMm, held, point) - radius;
    const whole = asked >= requiredMm;
    const clearanceMm = near.gapMm - radius;
    const margin = clearanceMm - asked;
    // No place before that can be worse than the worst: a margin changes by no more than this per mm.
    if (worst !== undefined) worseFromMm = arcLengthMm + (margin - worst.margin) / (1 + HELD_SLOPE);
    if ((!whole && margin >= 0) || (worst !== undefined && margin >= worst.margin)) continue;
    const clearance: Clearance = {
      to: { kind: 'run', id: run },
      clearanceMm,
      provenAtLeastMm: clearanceMm - (STEP_MM / 2) * (whole ? 1 : 1 + HELD_SLOPE) - CHORDS_MM,
      requiredMm: whole ? requiredMm : asked,
      at: { arcLengthMm, point: [point[0], point[1], point[2]] },
      onThing: [near.x, near.y, near.z],
    };
    worst = { clearance, margin };
  }
  return worst?.clearance;
}

function* livePlaces(
  setting: RunSetting,
  lay: Pick<Lay, 'centreline' | 'cutLengthMm'>,
): Generator<{ arcLengthMm: number; point: Vec3 }> {
  const { points, arcLengthMm } = lay.centreline;
  const live = { from: setting.a.end.shoulderToMouthMm, to: lay.cutLengthMm - setting.b.end.shoulderToMouthMm };
  for (let i = 0; i + 1 < points.length; i++) {
    const [p, q] = [points[i] as Vec3, points[i + 1] as Vec3];
    const [from, to] = [arcLengthMm[i] as number, arcLengthMm[i + 1] as number];
    const steps = Math.max(1, Math.ceil(distance(p, q) / STEP_MM));
    for (let k = 0; k < steps; k++) {
      const arc = from + ((to - from) * k) / steps;
      if (arc >= live.from && arc <= live.to) yield { arcLengthMm: arc, point: lerp(p, q, k / steps) };
    }
  }
}
