import type { Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';
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
  const arcLengthMm = Array.from({ length: steps + 1 }, (_, i) => (total * i) / steps);
  const places = arcLengthMm.map((s) => curveAt(curve, s));
  return {
    reachMm: REACH_MM,
    arcLengthMm: arcLengthMm.map(hundredths),
    radiusMm: places.map(({ curvature }) => hundredths(Math.min(STRAIGHT_MM, 1 / curvature))),
    heightMm: places.map(({ point }) => hundredths(point[2])),
    near: neighboursOf(project, setting.run, bay, others).flatMap((n) =>
      nearProfile(
        setting,
        places.map(({ point }) => point),
        n,
      ),
    ),
  };
}

/** What a profile says of one thing; none where that is out of reach all along. */
export function nearProfile(setting: RunSetting, places: readonly Vec3[], to: Neighbour): Profile['near'] {
  const radius = setting.outsideRadiusMm;
  const held = heldPlaces(setting);
  const parts: string[] = [];
  const near = places.map((point) => {
    const asked = askedDistanceMm(radius + to.requiredMm, held, point) - radius;
    const distance = to.valueAt(point, radius + REACH_MM);
    if (!Number.isFinite(distance)) return { clearance: REACH_MM, asked, part: -1 };
    const { thing } = to.describe(point);
    const name = thing.part ?? thing.id;
    if (!parts.includes(name)) parts.push(name);
    return { clearance: distance - radius, asked, part: parts.indexOf(name) };
  });
  if (parts.length === 0) return [];
  const { thing } = to.describe(places[0] as Vec3);
  return [
    {
      to: { kind: thing.kind, id: thing.id },
      clearanceMm: near.map((n) => hundredths(n.clearance)),
      askedMm: near.map((n) => hundredths(n.asked)),
      parts,
      part: near.map((n) => n.part),
    },
  ];
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
