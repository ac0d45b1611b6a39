import { addScaled, distance, rejectFrom, scale, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';
import { torsionalStiffness } from '../../document/parts/torsionalStiffness.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { curveAt } from '../../geometry/cubicCurve.ts';
import { carryWithoutTwist } from '../../geometry/twistFreeFrame.ts';
import { guessBetween, type TakenLay, takenLay } from '../handLay/takenLay.ts';
import { runSetting } from '../layRun/runLimits.ts';
import type { RunSetting } from '../layRun/runSetting.ts';
import { standingBody } from './bodyBays.ts';

/** A place that holds the hose, as it stands at rest, and what it is fixed to. */
export interface Hold {
  readonly body: string;
  readonly pose: Pose;
  readonly atMm: number;
}

/** A stretch of the hose between two places that hold it. */
export interface HeldSpan {
  readonly from: Hold;
  readonly to: Hold;
  readonly lengthMm: number;
  /** x, y, z of places along it at rest */
  readonly line: Float64Array;
  /** unit, square to the hose: where one line along the hose's surface is at both ends at rest */
  readonly surfaceFrom: Vec3;
  readonly surfaceTo: Vec3;
}

/** A laid hose as rocking needs it: everything that holds it, and the stretches between. */
export interface HeldHose {
  readonly resolved: ResolvedRun;
  readonly setting: RunSetting;
  readonly taken: TakenLay;
  readonly spans: readonly HeldSpan[];
  readonly torsionalStiffnessNmm2: number;
  /** the body that all holds are fixed to, if it is one */
  readonly carriedBy: string | undefined;
}

/** mm. Spacing of the line that a stretch starts from. */
const LINE_STEP_MM = 4;
/** mm. Spacing at which the surface line is carried along the hose. */
const CARRY_STEP_MM = 2;
/** mm. Stretches shorter than this are the clamp itself. */
const LEAST_SPAN_MM = 0.01;

/**
 * Reads a lay as a hose that is held: at both tails' ends by its ports, and by every clamp and pass-through, which grip
 * it and let no length through. moving: the bodies that move. undefined where there is no hose to hold.
 */
export function heldHose(
  project: Project,
  resolved: ResolvedRun,
  lay: Lay,
  moving: ReadonlySet<string>,
): HeldHose | undefined {
  if (lay.outcome === 'no-way' || lay.centreline.points.length < 3) return undefined;
  const setting = runSetting(project, resolved);
  const taken = takenLay(lay);
  const holds = holdsOf(resolved, setting, lay, moving);
  const bodies = new Set(holds.map((h) => h.body));
  return {
    resolved,
    setting,
    taken,
    spans: spansOf(taken, holds),
    torsionalStiffnessNmm2: torsionalStiffness(resolved.hose).valueNmm2,
    carriedBy: bodies.size === 1 ? holds[0]?.body : undefined,
  };
}

function holdsOf(
  { run, a, b }: ResolvedRun,
  setting: RunSetting,
  lay: Lay,
  moving: ReadonlySet<string>,
): readonly Hold[] {
  const { ends, straightTailMm: tail } = lay;
  const held = lay.supports.filter((s) => s.kind !== 'waypoint');
  const supports = held.map((s): Hold => {
    const stated = s.proposed ? undefined : run.supports.find((own) => own.id === s.id)?.body;
    const pose: Pose = { point: s.at.point, direction: s.axis };
    return { body: standingBody(stated, moving), pose, atMm: s.at.arcLengthMm };
  });
  return [
    {
      body: standingBody(a.port.body, moving),
      pose: { point: addScaled(ends.a.mouthPoint, ends.a.hoseAxis, tail.a), direction: ends.a.hoseAxis },
      atMm: setting.a.end.shoulderToMouthMm + tail.a,
    },
    ...supports.sort((x, y) => x.atMm - y.atMm),
    {
      body: standingBody(b.port.body, moving),
      pose: { point: addScaled(ends.b.mouthPoint, ends.b.hoseAxis, tail.b), direction: scale(ends.b.hoseAxis, -1) },
      atMm: lay.cutLengthMm - setting.b.end.shoulderToMouthMm - tail.b,
    },
  ];
}

function spansOf(taken: TakenLay, holds: readonly Hold[]): HeldSpan[] {
  const spans: HeldSpan[] = [];
  let surface: Vec3 = taken.lay.ends.a.up;
  for (let i = 0; i + 1 < holds.length; i++) {
    const [from, to] = [holds[i] as Hold, holds[i + 1] as Hold];
    if (to.atMm - from.atMm < LEAST_SPAN_MM) continue;
    const surfaceFrom = unit(rejectFrom(surface, from.pose.direction));
    const surfaceTo = carriedTo(taken, from, to, surfaceFrom);
    const line = guessBetween(taken, from.atMm, to.atMm, LINE_STEP_MM);
    // The curve read from the report passes within a hundredth of a millimetre of its holds; stretches meet in them exactly.
    line.set(from.pose.point, 0);
    line.set(to.pose.point, line.length - 3);
    spans.push({ from, to, lengthMm: to.atMm - from.atMm, line, surfaceFrom, surfaceTo });
    surface = surfaceTo;
  }
  return spans;
}

/** A hose tightened at rest has no twist: its surface line arrives as the twist-free frame does. */
function carriedTo({ curve }: TakenLay, from: Hold, to: Hold, start: Vec3): Vec3 {
  const steps = Math.max(2, Math.ceil((to.atMm - from.atMm) / CARRY_STEP_MM));
  const places = Array.from({ length: steps + 1 }, (_, i) => {
    const { point, tangent } = curveAt(curve, from.atMm + ((to.atMm - from.atMm) * i) / steps);
    return { point, tangent: i === 0 ? from.pose.direction : i === steps ? to.pose.direction : tangent };
  });
  const carried = carryWithoutTwist(
    places.map((p) => p.point),
    places.map((p) => p.tangent),
    start,
  );
  return carried[steps] as Vec3;
}

/** Whether a stretch's two ends move against each other. */
export function isWorked({ from, to }: HeldSpan): boolean {
  return from.body !== to.body;
}

/** mm, the straight line between where a stretch is held. */
export function chordMm(from: Pose, to: Pose): number {
  return distance(from.point, to.point);
}
