import { addScaled, distance, dot, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { cutOffMm } from '../../shared/document/parts/cutOff.ts';
import { outsideDiameterMm } from '../../shared/document/parts/outsideDiameter.ts';
import type { ResolvedRun } from '../../shared/document/project/resolve.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { bruteForceDistance } from './bruteForceDistance.ts';

/** mm. What chords of the report's centreline (at most 4 mm apart) may differ from its curve by on a bend of 40 mm. */
const CHORD_MM = 0.06;

/**
 * Everything a laid hose must be, whatever the bay, looked at the slow way on the report alone: every breach in words.
 * clearanceMm and spacingMm: what is asked from the bay and from other hoses, surface to surface, uncertainty included.
 */
export function layBreaches(
  lay: Lay,
  run: ResolvedRun,
  mesh: TriMesh,
  others: readonly Lay[],
  asked: { clearanceMm: number; spacingMm: number },
): string[] {
  return [
    ...lengthBreaches(lay, run),
    ...endBreaches(lay, run),
    ...bendBreaches(lay),
    ...nearBreaches(lay, run, asked.clearanceMm, (p) => bruteForceDistance(mesh, p)),
    ...others.flatMap((other) =>
      nearBreaches(lay, run, asked.spacingMm + other.outsideDiameterMm / 2, (p) =>
        toPolyline(p, other.centreline.points),
      ),
    ),
    ...selfBreaches(lay),
  ];
}

function lengthBreaches(lay: Lay, run: ResolvedRun): string[] {
  const { points } = lay.centreline;
  const chords = points.slice(1).reduce((sum, p, i) => sum + distance(p, points[i]!), 0);
  const breaches: string[] = [];
  if (chords > lay.cutLengthMm + 1e-6) breaches.push(`chords ${chords} longer than cut ${lay.cutLengthMm}`);
  if (chords < lay.cutLengthMm * 0.9985) breaches.push(`chords ${chords} far shorter than cut ${lay.cutLengthMm}`);
  const overall = lay.cutLengthMm + cutOffMm(run.a.end) + cutOffMm(run.b.end);
  if (Math.abs(overall - lay.overallLengthMm) > 1e-9) breaches.push('overall is not cut + both C');
  const sockets = run.a.end.shoulderToMouthMm + run.b.end.shoulderToMouthMm;
  if (Math.abs(lay.cutLengthMm - sockets - lay.liveLengthMm) > 1e-6) breaches.push('live is not cut less sockets');
  if (lay.slack < -1e-6) breaches.push(`slack ${lay.slack} below none`);
  if (Math.abs(lay.liveLengthMm / lay.tautLengthMm - 1 - lay.slack) > 2e-6)
    breaches.push('slack is not live over taut');
  return breaches;
}

function endBreaches(lay: Lay, run: ResolvedRun): string[] {
  const breaches: string[] = [];
  const { points } = lay.centreline;
  const ends = [
    ['a', points[0]!, unit(sub(points[1]!, points[0]!))],
    ['b', points.at(-1)!, unit(sub(points.at(-2)!, points.at(-1)!))],
  ] as const;
  for (const [side, shoulder, along] of ends) {
    const pose = lay.ends[side];
    if (distance(shoulder, pose.shoulderPoint) > 1e-6)
      breaches.push(`end ${side}: hose does not start at the shoulder`);
    if (run[side].end.shoulderToMouthMm > 0 && dot(along, pose.hoseAxis) < 0.99999)
      breaches.push(`end ${side}: hose does not leave along the end`);
    if (distance(pose.seatPoint, run[side].port.seatPoint) > 1e-9) breaches.push(`end ${side}: not on its seat`);
  }
  return breaches;
}

/** Radius of the circle through three neighbouring points: never far under the proven least radius. */
function bendBreaches(lay: Lay): string[] {
  const { points } = lay.centreline;
  let least = Infinity;
  for (let i = 1; i + 1 < points.length; i++)
    least = Math.min(least, circleRadius(points[i - 1]!, points[i]!, points[i + 1]!));
  const breaches: string[] = [];
  if (least < lay.minRadius.provenAtLeastMm * 0.985)
    breaches.push(`three points bend to ${least}, proven ${lay.minRadius.provenAtLeastMm}`);
  if (lay.minRadius.provenAtLeastMm < lay.minRadius.limitMm * 0.998)
    breaches.push(`bends to ${lay.minRadius.provenAtLeastMm}, limit ${lay.minRadius.limitMm}`);
  return breaches;
}

function circleRadius(a: Vec3, b: Vec3, c: Vec3): number {
  const [x, y, z] = [distance(b, c), distance(a, c), distance(a, b)];
  const s = (x + y + z) / 2;
  const area = Math.sqrt(Math.max(0, s * (s - x) * (s - y) * (s - z)));
  return area === 0 ? Infinity : (x * y * z) / (4 * area);
}

/** Distances hold outside the cones of held places; inside, half of the distance from the held place is asked. */
function nearBreaches(lay: Lay, run: ResolvedRun, askedMm: number, distanceTo: (p: Vec3) => number): string[] {
  const held: Vec3[] = [run.a.port.seatPoint, run.b.port.seatPoint];
  for (const s of run.run.supports) if (s.kind !== 'waypoint') held.push(s.point);
  const radius = outsideDiameterMm(run.hose, run.sleeve) / 2;
  const { points, arcLengthMm } = lay.centreline;
  const live = { from: run.a.end.shoulderToMouthMm, to: lay.cutLengthMm - run.b.end.shoulderToMouthMm };
  return points.flatMap((p, i) => {
    if (arcLengthMm[i]! < live.from || arcLengthMm[i]! > live.to) return [];
    const asked = Math.min(radius + askedMm, 0.5 * Math.min(...held.map((h) => distance(p, h))));
    const d = distanceTo(p);
    return d < asked - CHORD_MM
      ? [`at ${arcLengthMm[i]!.toFixed(1)} mm: ${d.toFixed(2)} from something, ${asked.toFixed(2)} asked`]
      : [];
  });
}

function toPolyline(p: Vec3, points: readonly Vec3[]): number {
  let least = Infinity;
  for (let i = 0; i + 1 < points.length; i++) {
    const ab = sub(points[i + 1]!, points[i]!);
    const square = dot(ab, ab);
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, points[i]!), ab) / square));
    least = Math.min(least, distance(p, addScaled(points[i]!, ab, t)));
  }
  return least;
}

/** A hose does not pass through itself: places further apart along it than half a turn of its limit stay apart. */
function selfBreaches(lay: Lay): string[] {
  const { points, arcLengthMm } = lay.centreline;
  const apartMm = Math.PI * lay.minRadius.limitMm;
  for (let i = 0; i < points.length; i += 2)
    for (let j = i + 1; j < points.length; j += 2)
      if (arcLengthMm[j]! - arcLengthMm[i]! > apartMm && distance(points[i]!, points[j]!) < lay.outsideDiameterMm)
        return [`touches itself at ${arcLengthMm[i]} and ${arcLengthMm[j]}`];
  return [];
}
