import type { Vec3 } from '../../base/vec3.ts';
import type { Lay, Thing } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { askedDistanceMm } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { type Neighbour, neighboursOf } from './neighbours.ts';
import type { Shape } from './relaxRoute.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';

type Profile = NonNullable<Lay['profile']>;

/** mm. Spacing of the profile: finer than a braid's width on paper. */
const STEP_MM = 6;
/** mm. Things further off than this from the hose's surface are not told apart. */
const REACH_MM = 150;
/** mm. Radii above this are straight to any eye. */
const STRAIGHT_MM = 10_000;

/**
 * What there is along a lay, shoulder to shoulder: centreline radius, height, and the clearance to every skin and run that
 * comes within REACH_MM, with what is asked there and the name of the part that is nearest. Exact at its places; the
 * proven least values of the lay lie between them.
 */
export function measureProfile(
  project: Project,
  setting: RunSetting,
  shape: Shape,
  bay: BayIndex,
  others: TubeField,
): Profile {
  const { curve } = shape;
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / STEP_MM));
  const places: Vec3[] = [];
  const arcLengthMm: number[] = [];
  const radiusMm: number[] = [];
  const heightMm: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const s = (total * i) / steps;
    const { point, curvature } = curveAt(curve, s);
    places.push(point);
    arcLengthMm.push(hundredths(s));
    radiusMm.push(hundredths(Math.min(STRAIGHT_MM, 1 / curvature)));
    heightMm.push(hundredths(point[2]));
  }
  const near = neighboursOf(project, setting.run, bay, others).flatMap((n) => nearProfile(setting, places, n));
  return { reachMm: REACH_MM, arcLengthMm, radiusMm, heightMm, near };
}

/** What a profile says of one thing; none where that is out of reach all along. */
export function nearProfile(setting: RunSetting, places: readonly Vec3[], to: Neighbour): Profile['near'] {
  const radius = setting.outsideRadiusMm;
  const held = heldPlaces(setting);
  const parts: string[] = [];
  const part: number[] = [];
  const clearanceMm: number[] = [];
  const askedMm: number[] = [];
  for (const point of places) {
    askedMm.push(hundredths(askedDistanceMm(radius + to.requiredMm, held, point) - radius));
    const distance = to.distanceTo(point, radius + REACH_MM);
    const isNear = Number.isFinite(distance);
    clearanceMm.push(isNear ? hundredths(distance - radius) : REACH_MM);
    part.push(isNear ? numberOf(parts, to.describe(point).thing) : -1);
  }
  if (parts.length === 0) return [];
  const { thing } = to.describe(places[0] as Vec3);
  return [{ to: { kind: thing.kind, id: thing.id }, clearanceMm, askedMm, parts, part }];
}

/** Number of a thing's part among those met so far, which it is added to. */
function numberOf(parts: string[], thing: Thing): number {
  const name = thing.part ?? thing.id;
  if (!parts.includes(name)) parts.push(name);
  return parts.indexOf(name);
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
