import { ROUNDING_MM, ROUNDING_RAD } from '../../base/tolerances.ts';
import { dot, lengthOf, UP } from '../../base/vec3.ts';
import {
  type PathSegment,
  type Pose,
  poseAlongSegment,
  reversedPose,
  segmentLengthMm,
} from '../../geometry/arcLinePath.ts';

/**
 * That a way has no crest in which air would stay, asked piece by piece. A way without a crest comes down from its higher
 * end, and once it has turned upwards it only climbs; so wherever it runs above its lower end it must not rise for one who
 * comes from the higher end. (A crest that lies whole below the lower end is not seen by this; the laid shape is judged.)
 */
export interface NoCrest {
  /** mm, height of the lower end, with what is tolerated: below it the way may go up and down */
  readonly lowMm: number;
  /** mm, above this it may rise too: a higher end that faces upwards cannot but start with a crest; infinite = nowhere */
  readonly highMm: number;
  /** mm, no place of the way may lie above this */
  readonly ceilingMm: number;
  /** true = who goes the way as it is written comes from the higher end */
  readonly fromHigher: boolean;
}

/** The same for one who goes the way backwards. */
export function turnedRoundNoCrest(noCrest: NoCrest | undefined): NoCrest | undefined {
  return noCrest && { ...noCrest, fromHigher: !noCrest.fromHigher };
}

/**
 * Whether a segment nowhere rises between the two heights, seen from the higher end. Closed form: a straight rises all
 * along or not at all; along an arc the height is h(u) = R (a sin u + b (1 - cos u)), which rises between the places where
 * a cos u + b sin u = 0, so only the begin and the end of each rise are looked at.
 */
export function segmentHasNoCrest(noCrest: NoCrest, pose: Pose, segment: PathSegment): boolean {
  if (!noCrest.fromHigher) {
    const end = poseAlongSegment(pose, segment, segmentLengthMm(segment));
    return risesNowhere(noCrest, reversedPose(end), turnedRoundSegment(pose, segment));
  }
  return risesNowhere(noCrest, pose, segment);
}

function risesNowhere({ lowMm, highMm }: NoCrest, { point, direction }: Pose, segment: PathSegment): boolean {
  const a = direction[2];
  const from = point[2];
  const isBarred = (begin: number, end: number): boolean => end > lowMm + ROUNDING_MM && begin < highMm - ROUNDING_MM;
  if (segment.kind === 'line') return a <= ROUNDING_RAD || !isBarred(from, from + a * segment.lengthMm);
  const { radiusMm, angleRad } = segment;
  const b = dot(segment.normal, UP);
  const most = lengthOf(a, b);
  if (most <= ROUNDING_RAD) return true;
  const heightAt = (u: number): number => from + radiusMm * (a * Math.sin(u) + b * (1 - Math.cos(u)));
  // It rises for u within a quarter turn of the steepest place, once a turn.
  const steepest = Math.atan2(b, a);
  for (let turn = -1; ; turn++) {
    const begin = Math.max(0, steepest + 2 * Math.PI * turn - Math.PI / 2);
    const end = Math.min(angleRad, steepest + 2 * Math.PI * turn + Math.PI / 2);
    if (begin >= angleRad) return true;
    // What rises by rounding only is level.
    if (
      end > begin &&
      heightAt(end) - heightAt(begin) > ROUNDING_RAD * radiusMm &&
      isBarred(heightAt(begin), heightAt(end))
    )
      return false;
  }
}

/** The segment as it is gone from its end to its start. */
function turnedRoundSegment(pose: Pose, segment: PathSegment): PathSegment {
  if (segment.kind === 'line') return segment;
  const { radiusMm, angleRad, normal } = segment;
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  const { direction } = pose;
  const turned = [0, 1, 2].map((k) => c * (normal[k] as number) - s * (direction[k] as number));
  return { kind: 'arc', radiusMm, angleRad, normal: turned as unknown as Pose['direction'] };
}
