import { distance, lerp, type Vec3 } from '../../base/vec3.ts';
import type { Clearance, Lay } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import { askedDistanceMm, HELD_SLOPE } from '../bay/runField.ts';
import { nearestTube, newNearestTube, type TubeField } from '../bay/tubeField.ts';
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
  field: TubeField,
): Clearance | undefined {
  if (field.tubes.length === 0) return undefined;
  const { requiredMm } = requiredRunClearance(project, setting.run, run);
  const radius = setting.outsideRadiusMm;
  const held = heldPlaces(setting);
  const near = newNearestTube();
  const places = livePlaces(setting, lay);
  let worst: { clearance: Clearance; margin: number } | undefined;
  /** The margin at a place; a worse one than the worst known takes its place. */
  const look = ({ arcLengthMm, point }: Place): number => {
    nearestTube(field, point[0], point[1], point[2], Number.POSITIVE_INFINITY, near);
    const asked = askedDistanceMm(radius + requiredMm, held, point) - radius;
    const whole = asked >= requiredMm;
    const clearanceMm = near.gapMm - radius;
    const margin = clearanceMm - asked;
    if ((!whole && margin >= 0) || (worst !== undefined && margin >= worst.margin)) return margin;
    const clearance: Clearance = {
      to: { kind: 'run', id: run },
      clearanceMm,
      provenAtLeastMm: clearanceMm - (STEP_MM / 2) * (whole ? 1 : 1 + HELD_SLOPE) - CHORDS_MM,
      requiredMm: whole ? requiredMm : asked,
      at: { arcLengthMm, point },
      onThing: [near.x, near.y, near.z],
    };
    worst = { clearance, margin };
    return margin;
  };
  for (let i = 0; i < places.count; i += FIRST_STEPS) look(places.at(i));
  for (let i = 0; i < places.count; ) {
    const margin = look(places.at(i));
    // No place before that can be worse than the worst: a margin changes by no more than this per mm.
    const passedMm = worst === undefined ? 0 : (margin - worst.margin) / (1 + HELD_SLOPE);
    i += Math.max(1, Math.ceil(passedMm / STEP_MM));
  }
  return worst?.clearance;
}

/** Every so many places are looked at first: most of the others are then seen to be no worse. */
const FIRST_STEPS = 32;

interface Place {
  readonly arcLengthMm: number;
  readonly point: [number, number, number];
}

/** The places of the live hose along the report's centreline, at most STEP_MM from each to the next. */
function livePlaces(
  setting: RunSetting,
  lay: Pick<Lay, 'centreline' | 'cutLengthMm'>,
): { readonly count: number; at(i: number): Place } {
  const { points, arcLengthMm } = lay.centreline;
  const live = { from: setting.a.end.shoulderToMouthMm, to: lay.cutLengthMm - setting.b.end.shoulderToMouthMm };
  /** by place: the piece of the line that it lies on, and how far along that */
  const pieces: number[] = [];
  const shares: number[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [arcLengthMm[i] as number, arcLengthMm[i + 1] as number];
    const steps = Math.max(1, Math.ceil(distance(points[i] as Vec3, points[i + 1] as Vec3) / STEP_MM));
    for (let k = 0; k < steps; k++) {
      const arc = from + ((to - from) * k) / steps;
      if (arc < live.from || arc > live.to) continue;
      pieces.push(i);
      shares.push(k / steps);
    }
  }
  return {
    count: pieces.length,
    at: (place) => {
      const i = pieces[place] as number;
      const share = shares[place] as number;
      const [from, to] = [arcLengthMm[i] as number, arcLengthMm[i + 1] as number];
      const [x, y, z] = lerp(points[i] as Vec3, points[i + 1] as Vec3, share);
      return { arcLengthMm: from + (to - from) * share, point: [x, y, z] };
    },
  };
}
