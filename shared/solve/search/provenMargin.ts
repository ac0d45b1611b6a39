import { CLEARANCE_PROOF_MM } from '../../base/tolerances.ts';
import type { Vec3 } from '../../base/vec3.ts';
import {
  type ArcLinePath,
  type PathSegment,
  type Pose,
  poseAlongSegment,
  segmentLengthMm,
} from '../../geometry/arcLinePath.ts';
import { type ClearSpace, marginAt, mostFallMm } from './clearSpace.ts';

export interface ProvenMargin {
  /** nowhere on the path is the margin below this, mm */
  readonly atLeastMm: number;
  /** the least margin met, mm, and where */
  readonly metMm: number;
  readonly at: Vec3;
}

/** First spacing of the places asked, mm. */
const FIRST_STEP_MM = 8;

/**
 * Least margin along a path with proof: between two places h apart with margins m0 and m1 it is at least
 * (m0 + m1 - steepness h) / 2; intervals are halved until that bound lies within CLEARANCE_PROOF_MM of the least margin met.
 */
export function provenMargin(space: ClearSpace, path: ArcLinePath): ProvenMargin {
  const state = { metMm: Number.POSITIVE_INFINITY, at: path.start.point, atLeastMm: Number.POSITIVE_INFINITY };
  const ask = (pose: Pose, segment: PathSegment, s: number): number => {
    const { point } = poseAlongSegment(pose, segment, s);
    const margin = marginAt(space, point[0], point[1], point[2]);
    if (margin < state.metMm) Object.assign(state, { metMm: margin, at: point });
    return margin;
  };
  const open: { pose: Pose; segment: PathSegment; from: number; to: number; m0: number; m1: number }[] = [];
  let pose = path.start;
  for (const segment of path.segments) {
    const lengthMm = segmentLengthMm(segment);
    const steps = Math.max(1, Math.ceil(lengthMm / FIRST_STEP_MM));
    let m0 = ask(pose, segment, 0);
    for (let i = 0; i < steps; i++) {
      const to = ((i + 1) * lengthMm) / steps;
      const m1 = ask(pose, segment, to);
      open.push({ pose, segment, from: (i * lengthMm) / steps, to, m0, m1 });
      m0 = m1;
    }
    pose = poseAlongSegment(pose, segment, lengthMm);
  }
  for (let next = open.pop(); next; next = open.pop()) {
    const { from, to, m0, m1 } = next;
    const { point } = poseAlongSegment(next.pose, next.segment, (from + to) / 2);
    const bound = (m0 + m1) / 2 - mostFallMm(space, ...point, (to - from) / 2);
    if (bound >= state.metMm - CLEARANCE_PROOF_MM) {
      state.atLeastMm = Math.min(state.atLeastMm, bound);
      continue;
    }
    const middle = (from + to) / 2;
    const m = ask(next.pose, next.segment, middle);
    open.push({ ...next, to: middle, m1: m }, { ...next, from: middle, m0: m });
  }
  return { ...state, atLeastMm: Math.min(state.atLeastMm, state.metMm) };
}
