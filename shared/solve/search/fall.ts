import { dot, lengthOf, scale, type Vec3 } from '../../base/vec3.ts';
import type { PathSegment, Pose } from '../../geometry/arcLinePath.ts';

/** That a way has to run downhill all along, as a drain does. */
export interface Fall {
  /** unit; downhill for one who goes the way the hose goes */
  readonly down: Vec3;
  /** sine of the least slope, 0 to 1 */
  readonly leastSin: number;
}

/** The same fall for one who goes the way backwards: he has to climb. */
export function turnedRoundFall(fall: Fall | undefined): Fall | undefined {
  return fall && { ...fall, down: scale(fall.down, -1) };
}

/**
 * Whether a segment falls at least so much everywhere. Closed form: along a straight the slope is constant; along an arc
 * the direction's share downhill is A cos u + B sin u, least at an end or at the one place inside where it turns.
 */
export function segmentFalls(fall: Fall, { direction }: Pose, segment: PathSegment): boolean {
  const a = dot(direction, fall.down);
  if (a < fall.leastSin) return false;
  if (segment.kind === 'line') return true;
  const b = dot(segment.normal, fall.down);
  const { angleRad } = segment;
  if (a * Math.cos(angleRad) + b * Math.sin(angleRad) < fall.leastSin) return false;
  const lowest = Math.atan2(b, a) + Math.PI;
  const inside = ((lowest % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI) < angleRad;
  return !inside || -lengthOf(a, b) >= fall.leastSin;
}
