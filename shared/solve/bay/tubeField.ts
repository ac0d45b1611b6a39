import type { Vec3 } from '../../base/vec3.ts';

/** Another run's hose and ends as an obstacle: a chain of straight pieces with a radius. Points mm, bay frame. */
export interface Tube {
  readonly run: string;
  readonly points: readonly Vec3[];
  readonly radiusMm: number;
  /** true = of a run that does not lie yet: what stands on its ports whatever way its hose goes */
  readonly standing?: boolean;
}

export interface NearestTube {
  /** from the point to the tube's surface; negative inside */
  gapMm: number;
  x: number;
  y: number;
  z: number;
  run: string;
}

/** Tubes with their pieces in short groups, each in a ball, so that most of them are passed over. */
export interface TubeField {
  readonly tubes: readonly Tube[];
  /** ax ay az bx by bz radius tubeNumber, per piece */
  readonly pieces: Float64Array;
  /** centre x y z, ball radius (tube radius included), first piece, one past the last, per group */
  readonly groups: Float64Array;
}

const GROUP_PIECES = 8;
const PIECE_STRIDE = 8;
const GROUP_STRIDE = 6;

export function buildTubeField(tubes: readonly Tube[]): TubeField {
  const pieces: number[] = [];
  const groups: number[] = [];
  tubes.forEach((tube, number) => {
    for (let first = 0; first + 1 < tube.points.length; first += GROUP_PIECES) {
      const last = Math.min(first + GROUP_PIECES, tube.points.length - 1);
      groups.push(
        ...ballOf(tube, first, last),
        pieces.length / PIECE_STRIDE,
        pieces.length / PIECE_STRIDE + last - first,
      );
      for (let i = first; i < last; i++)
        pieces.push(...(tube.points[i] as Vec3), ...(tube.points[i + 1] as Vec3), tube.radiusMm, number);
    }
  });
  return { tubes, pieces: Float64Array.from(pieces), groups: Float64Array.from(groups) };
}

function ballOf(tube: Tube, first: number, last: number): [number, number, number, number] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = first; i <= last; i++)
    for (let k = 0; k < 3; k++) {
      const v = (tube.points[i] as Vec3)[k] as number;
      low[k] = Math.min(low[k] as number, v);
      high[k] = Math.max(high[k] as number, v);
    }
  const centre = low.map((l, k) => (l + (high[k] as number)) / 2) as [number, number, number];
  const half = Math.hypot(...low.map((l, k) => ((high[k] as number) - l) / 2));
  return [...centre, half + tube.radiusMm];
}

export function newNearestTube(): NearestTube {
  return { gapMm: Infinity, x: 0, y: 0, z: 0, run: '' };
}

/**
 * The nearest tube surface to a point within boundMm: true when there is one; exact distance to the straight pieces.
 * out: gap (mm), the point on that tube's centreline, and its run.
 */
export function nearestTube(
  field: TubeField,
  x: number,
  y: number,
  z: number,
  boundMm: number,
  out: NearestTube,
): boolean {
  const { groups, pieces } = field;
  let best = boundMm;
  let piece = -1;
  let bestT = 0;
  for (let g = 0; g < groups.length; g += GROUP_STRIDE) {
    const far = best + (groups[g + 3] as number);
    if (far <= 0) continue;
    const dx = x - (groups[g] as number);
    const dy = y - (groups[g + 1] as number);
    const dz = z - (groups[g + 2] as number);
    if (dx * dx + dy * dy + dz * dz >= far * far) continue;
    for (let i = groups[g + 4] as number; i < (groups[g + 5] as number); i++) {
      const t = nearestParameter(pieces, i * PIECE_STRIDE, x, y, z);
      const gap = gapToPiece(pieces, i * PIECE_STRIDE, t, x, y, z);
      if (gap < best) {
        best = gap;
        piece = i * PIECE_STRIDE;
        bestT = t;
      }
    }
  }
  if (piece < 0) {
    out.gapMm = Infinity;
    return false;
  }
  out.gapMm = best;
  out.x = along(pieces, piece, 0, bestT);
  out.y = along(pieces, piece, 1, bestT);
  out.z = along(pieces, piece, 2, bestT);
  out.run = (field.tubes[pieces[piece + 7] as number] as Tube).run;
  return true;
}

function along(p: Float64Array, at: number, axis: number, t: number): number {
  const a = p[at + axis] as number;
  return a + t * ((p[at + 3 + axis] as number) - a);
}

function nearestParameter(p: Float64Array, at: number, x: number, y: number, z: number): number {
  const ax = p[at] as number;
  const ay = p[at + 1] as number;
  const az = p[at + 2] as number;
  const ux = (p[at + 3] as number) - ax;
  const uy = (p[at + 4] as number) - ay;
  const uz = (p[at + 5] as number) - az;
  const square = ux * ux + uy * uy + uz * uz;
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy + (z - az) * uz) / square));
}

function gapToPiece(p: Float64Array, at: number, t: number, x: number, y: number, z: number): number {
  const dx = x - along(p, at, 0, t);
  const dy = y - along(p, at, 1, t);
  const dz = z - along(p, at, 2, t);
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - (p[at + 6] as number);
}
