import { addScaled, distance, lerp, sub, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import type { AdapterPose, EndPose } from '../../../shared/document/lay/schema.ts';

/** Part of each leg that the elbow's round takes up, at most: leaves a straight stub for the nut and for the socket. */
const ROUND_SHARE = 0.6;
const ROUND_STEPS = 10;

/** The tube of an end from the shoulder to just behind its nut: as its bend runs where that is known, else two legs with a round. */
export function elbowPath(pose: EndPose): readonly Vec3[] {
  if (pose.body !== undefined) return pose.body.slice(0, -1).reverse();
  const { shoulderPoint: shoulder, bendPoint: bend, seatPoint: seat } = pose;
  return rounded(shoulder, bend, seat);
}

/** Two legs with a round between them; one straight where a leg has no length. */
function rounded(start: Vec3, bend: Vec3, end: Vec3): readonly Vec3[] {
  const round = ROUND_SHARE * Math.min(distance(start, bend), distance(bend, end));
  if (round < 0.1) return [start, end];
  const from = addScaled(bend, unit(sub(start, bend)), round);
  const to = addScaled(bend, unit(sub(end, bend)), round);
  const path: Vec3[] = [start];
  for (let i = 0; i <= ROUND_STEPS; i++) {
    const t = i / ROUND_STEPS;
    path.push(lerp(lerp(from, bend, t), lerp(bend, to, t), t));
  }
  path.push(end);
  return path;
}

/** Share of the first leg of an adapter that its hex takes up. */
const HEX_SHARE = 0.55;

/** What an adapter is drawn of: its tubes, a tee's branch among them, and the hex by which it is screwed in. */
export function adapterPaths({ points, branch }: Pick<AdapterPose, 'points' | 'branch'>): {
  readonly tubes: readonly (readonly Vec3[])[];
  readonly hex: readonly Vec3[];
} {
  const [seat, bend, outlet] = [points[0] as Vec3, points[1] as Vec3, points[2] as Vec3];
  // An adapter with no first leg has its hex where it has its length.
  const hexTo = distance(seat, bend) > 1 ? bend : outlet;
  return {
    tubes: [rounded(seat, bend, outlet), ...(branch === undefined ? [] : [branch])],
    hex: [lerp(seat, hexTo, 0.1), lerp(seat, hexTo, 0.1 + HEX_SHARE)],
  };
}

/** Where the nut sits: from the seat back along the outlet, by no more than the leg is long. */
export function nutPath(pose: EndPose, lengthMm: number): readonly Vec3[] {
  const leg = distance(pose.seatPoint, pose.bendPoint);
  const reach = leg > 1 ? Math.min(lengthMm, leg * 0.8) : lengthMm;
  return [pose.seatPoint, addScaled(pose.seatPoint, pose.outletAxis, -reach)];
}
