import { addScaled, distance, lerp, sub, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import type { EndPose } from '../../../shared/document/lay/schema.ts';

/** Part of each leg that the elbow's round takes up, at most: leaves a straight stub for the nut and for the socket. */
const ROUND_SHARE = 0.6;
const ROUND_STEPS = 10;

/** The tube of an end from the shoulder to just behind its nut: two straight legs with a round between them. */
export function elbowPath(pose: EndPose): readonly Vec3[] {
  const { shoulderPoint: shoulder, bendPoint: bend, seatPoint: seat } = pose;
  const round = ROUND_SHARE * Math.min(distance(shoulder, bend), distance(bend, seat));
  if (round < 0.1) return [shoulder, seat];
  const from = addScaled(bend, unit(sub(shoulder, bend)), round);
  const to = addScaled(bend, unit(sub(seat, bend)), round);
  const path: Vec3[] = [shoulder];
  for (let i = 0; i <= ROUND_STEPS; i++) {
    const t = i / ROUND_STEPS;
    path.push(lerp(lerp(from, bend, t), lerp(bend, to, t), t));
  }
  path.push(seat);
  return path;
}

/** Where the nut sits: from the seat back along the outlet, by no more than the leg is long. */
export function nutPath(pose: EndPose, lengthMm: number): readonly Vec3[] {
  const leg = distance(pose.seatPoint, pose.bendPoint);
  const reach = leg > 1 ? Math.min(lengthMm, leg * 0.8) : lengthMm;
  return [pose.seatPoint, addScaled(pose.seatPoint, pose.outletAxis, -reach)];
}
