import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Clearance } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { type LeastAlong, leastAlong, type ValueOfPlace } from '../../geometry/curveLimits.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { askedDistanceMm, HELD_SLOPE } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type Neighbour, neighboursOf } from './neighbours.ts';
import type { Shape } from './relaxRoute.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

/**
 * The least clearance of a lay to every skin of the bay and to every other run, each with its proof within proofMm.
 * Measured where the whole distance is asked, which is away from the run's ports, clamps and pass-throughs; inside the
 * cones of held places only a breach of the cone is reported, with what is asked there. A run that lies wholly inside
 * them is measured as a whole.
 */
export function measureClearances(
  project: Project,
  setting: RunSetting,
  shape: Shape,
  bay: BayIndex,
  others: TubeField,
  proofMm: number,
): Clearance[] {
  return neighboursOf(project, setting.run, bay, others).flatMap((n) => clearanceTo(setting, shape.curve, n, proofMm));
}

/** Of those clearances the one that is furthest under, or least over, what is asked; none where nothing is in reach. Sooner than all of them. */
export function tightestClearance(
  project: Project,
  setting: RunSetting,
  shape: Shape,
  bay: BayIndex,
  others: TubeField,
  proofMm: number,
): Clearance | undefined {
  const overMm = (c: Clearance): number => c.clearanceMm - c.requiredMm;
  let tightest: Clearance | undefined;
  for (const to of neighboursOf(project, setting.run, bay, others)) {
    const withinMm = tightest === undefined ? Number.POSITIVE_INFINITY : to.requiredMm + overMm(tightest);
    for (const clearance of clearanceTo(setting, shape.curve, to, proofMm, withinMm))
      if (tightest === undefined || overMm(clearance) < overMm(tightest)) tightest = clearance;
  }
  return tightest;
}

/**
 * As `measureClearances`, of a curve from shoulder to shoulder to one thing; none where that is out of reach, or nowhere nearer than
 * withinMm.
 */
export function clearanceTo(
  setting: RunSetting,
  curve: CubicCurve,
  to: Neighbour,
  proofMm: number,
  withinMm = Number.POSITIVE_INFINITY,
): Clearance[] {
  const radius = setting.outsideRadiusMm;
  const held = heldPlaces(setting);
  const wholeMm = radius + to.requiredMm;
  const live = { from: setting.a.end.shoulderToMouthMm, to: curveLengthMm(curve) - setting.b.end.shoulderToMouthMm };
  const left = new RoomLeft(to, wholeMm, held);
  const margin = leastAlong(curve, live.from, live.to, left, 1 + HELD_SLOPE, proofMm, 0);
  const askedMm = askedDistanceMm(wholeMm, held, margin.point);
  const breached = margin.found < -proofMm && askedMm < wholeMm;
  const away = new DistanceTo(to);
  const open = openStretches(curve, live, held, wholeMm / HELD_SLOPE);
  const least = leastOf(open.map((part) => leastAlong(curve, part.from, part.to, away, 1, proofMm, radius + withinMm)));
  const place = breached ? breachAsDistance(margin, askedMm) : least;
  if (!Number.isFinite(place.found)) return [];
  const { thing, onThing } = to.describe(place.point);
  return [
    {
      to: thing,
      clearanceMm: place.found - radius,
      provenAtLeastMm: place.provenAtLeast - radius,
      requiredMm: breached ? askedMm - radius : to.requiredMm,
      at: { arcLengthMm: place.arcLengthMm, point: [...place.point] as [number, number, number] },
      onThing: [...onThing] as [number, number, number],
    },
  ];
}

/** The distance to a thing, mm. */
class DistanceTo implements ValueOfPlace {
  private readonly to: Neighbour;

  constructor(to: Neighbour) {
    this.to = to;
  }

  valueAt(point: Vec3, upTo: number): number {
    return this.to.distanceTo(point, upTo);
  }
}

/** How much more than is asked there it is to a thing, mm; the rule of held places included. */
class RoomLeft implements ValueOfPlace {
  private readonly to: Neighbour;
  private readonly wholeMm: number;
  private readonly held: readonly Vec3[];

  constructor(to: Neighbour, wholeMm: number, held: readonly Vec3[]) {
    this.to = to;
    this.wholeMm = wholeMm;
    this.held = held;
  }

  valueAt(point: Vec3, upTo: number): number {
    const askedMm = askedDistanceMm(this.wholeMm, this.held, point);
    return this.to.distanceTo(point, askedMm + upTo) - askedMm;
  }
}

function leastOf(found: readonly LeastAlong[]): LeastAlong {
  const nearest = found.reduce((a, b) => (b.found < a.found ? b : a));
  return { ...nearest, provenAtLeast: Math.min(...found.map((f) => f.provenAtLeast)) };
}

function breachAsDistance(margin: LeastAlong, askedMm: number): LeastAlong {
  return { ...margin, found: margin.found + askedMm, provenAtLeast: margin.provenAtLeast + askedMm };
}

/**
 * The stretches of the live hose away from every held place, where the whole distance is asked; the whole live hose if
 * there is none.
 */
function openStretches(curve: CubicCurve, live: Stretch, held: readonly Vec3[], zoneMm: number): readonly Stretch[] {
  /** mm outside of every zone, or inside; it changes by no more than the way along the curve. */
  const outsideMm = (s: number): number => {
    const { point } = curveAt(curve, s);
    return held.reduce((least, place) => Math.min(least, distance(point, place) - zoneMm), Number.POSITIVE_INFINITY);
  };
  const stretches: Stretch[] = [];
  let from: number | undefined;
  for (let step = 0; live.from + step * ZONE_STEP_MM <= live.to; ) {
    const s = live.from + step * ZONE_STEP_MM;
    const outside = outsideMm(s);
    if (outside >= 0) from ??= s;
    else if (from !== undefined) {
      stretches.push({ from, to: s - ZONE_STEP_MM });
      from = undefined;
    }
    // Nothing changes sooner than this.
    step += Math.max(1, Math.min(MOST_STEPS, Math.floor(Math.abs(outside) / ZONE_STEP_MM)));
  }
  if (from !== undefined) stretches.push({ from, to: live.to });
  return stretches.length > 0 ? stretches : [live];
}

/** A part of the curve by arc length, mm. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** More steps than any hose has. */
const MOST_STEPS = 1e6;
/** mm. How finely the edges of the held zones are found; it only chooses where the reported number comes from. */
const ZONE_STEP_MM = 1;
