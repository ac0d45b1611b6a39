import { distance, lerp, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Project, Run, Support } from '../../shared/document/project/schema.ts';
import { numberedId } from './edits/freshId.ts';
import type { SupportKind } from './edits/supportEdits.ts';
import { nearestArc, placeAt } from './layPlaces.ts';

/** A place and a direction along the hose, END A to END B. */
export interface HosePlace {
  readonly point: Vec3;
  readonly along: Vec3;
}

/** The part of a hose that lies free: between its mouths, where it is not in a collar. Mm from shoulder A. */
export function freePart(lay: Lay): { readonly fromMm: number; readonly toMm: number } {
  const { a, b } = lay.ends;
  return {
    fromMm: distance(a.shoulderPoint, a.mouthPoint),
    toMm: lay.cutLengthMm - distance(b.shoulderPoint, b.mouthPoint),
  };
}

/** A place on the free part of the hose by its arc length; on a run without a hose, the middle between its ports. */
export function hosePlace(
  project: Project,
  run: Run,
  lay: Lay | undefined,
  arcLengthMm: number | null,
): HosePlace | null {
  const laid = lay === undefined ? null : placeAt(lay.centreline, onFreePart(lay, arcLengthMm));
  if (laid !== null) return laid;
  const seatOf = (id: string): Vec3 | undefined => project.ports.find((port) => port.id === id)?.seatPoint;
  const [a, b] = [seatOf(run.a.port), seatOf(run.b.port)];
  if (a === undefined || b === undefined) return null;
  const across = sub(b, a);
  return across.every((mm) => mm === 0) ? null : { point: lerp(a, b, 0.5), along: unit(across) };
}

function onFreePart(lay: Lay, arcLengthMm: number | null): number {
  const { fromMm, toMm } = freePart(lay);
  return Math.min(toMm, Math.max(fromMm, arcLengthMm ?? lay.cutLengthMm / 2));
}

/** mm. A lay holds its hose in the very place that is stated; coordinates are rounded on the way. */
const SAME_PLACE_MM = 0.05;

/**
 * Where a support stands along the hose, mm from shoulder A: where the lay holds it, which is told apart where the hose
 * passes twice. One that stands elsewhere than where the lay held it, and one that only guides, stands where the hose
 * passes nearest.
 */
export function supportArc(lay: Lay, support: { readonly id: string; readonly point: Vec3 }): number {
  const laid = lay.supports.find(({ id }) => id === support.id);
  const isHeldThere = laid !== undefined && distance(laid.at.point, support.point) <= SAME_PLACE_MM;
  return isHeldThere ? laid.at.arcLengthMm : nearestArc(lay.centreline, support.point);
}

/** The number a new support gets in the run's list, so that the list stays in the order the hose meets them. */
export function orderAt(run: Run, lay: Lay | undefined, arcLengthMm: number | null): number {
  if (lay === undefined || lay.centreline.points.length === 0) return run.supports.length;
  const arc = arcLengthMm ?? lay.cutLengthMm / 2;
  return run.supports.filter((support) => supportArc(lay, support) <= arc).length;
}

/** A support of a kind at a place; coordinates to a hundredth of a mm, which is finer than any hand. */
export function supportAt(run: Run, kind: SupportKind, { point, along }: HosePlace): Support {
  return { id: numberedId(kind, run.supports), kind, point: rounded(point, 100), axis: rounded(along, 1e6) };
}

/** A point or direction to so many parts of one. */
export function rounded(v: Vec3, parts: number): [number, number, number] {
  const round = (n: number): number => Math.round(n * parts) / parts + 0;
  return [round(v[0]), round(v[1]), round(v[2])];
}
