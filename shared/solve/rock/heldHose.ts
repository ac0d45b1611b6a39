import { addScaled, distance, rejectFrom, scale, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lay, LaySupport } from '../../document/lay/schema.ts';
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
  /** a, b, or the support's */
  readonly id: string;
  readonly body: string;
  readonly pose: Pose;
  readonly atMm: number;
}

/** A stretch of the hose between two places that hold it. */
export interface HeldSpan {
  readonly from: Hold;
  readonly to: Hold;
  readonly lengthMm: number;
  /** x, y, z of places along it at rest, evenly spaced */
  readonly line: Float64Array;
  /** unit, square to the hose: where one line along the hose's surface is at both ends at rest */
  readonly surfaceFrom: Vec3;
  readonly surfaceTo: Vec3;
}

/** The bodies of the bay as holds ask after them. */
export interface Bodies {
  readonly moving: ReadonlySet<string>;
  /** the body that has the surface nearest to a place, mm */
  nearest(point: Vec3): string;
}

/** A laid hose as rocking needs it: everything that holds it, and the stretches between. */
export interface HeldHose {
  readonly resolved: ResolvedRun;
  readonly setting: RunSetting;
  readonly taken: TakenLay;
  readonly holds: readonly Hold[];
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
 * Reads a lay as a hose that is held: at both mouths by its ends, and by every clamp and pass-through, which grip
 * it and let no length through. Beyond the mouths nothing holds it straight: the tails are how it is fitted, and give when
 * its ends move; but for a hose that is fitted anew they are straight again. undefined where there is no hose to hold.
 */
export function heldHose(
  project: Project,
  resolved: ResolvedRun,
  lay: Lay,
  bodies: Bodies,
  isFittedAnew = false,
): HeldHose | undefined {
  if (lay.outcome === 'no-way' || lay.centreline.points.length < 3) return undefined;
  const setting = runSetting(project, resolved);
  const taken = takenLay(lay);
  const tailMm = isFittedAnew ? lay.straightTailMm : { a: 0, b: 0 };
  const holds = holdsOf(resolved, setting, lay, bodies, tailMm);
  const holders = new Set(holds.map((h) => h.body));
  return {
    resolved,
    setting,
    taken,
    holds,
    spans: spansOf(taken, holds),
    torsionalStiffnessNmm2: torsionalStiffness(resolved.hose).valueNmm2,
    carriedBy: holders.size === 1 ? holds[0]?.body : undefined,
  };
}

function holdsOf(
  { run, a, b }: ResolvedRun,
  setting: RunSetting,
  lay: Lay,
  bodies: Bodies,
  tailMm: Lay['straightTailMm'],
): readonly Hold[] {
  const { ends } = lay;
  const first: Hold = {
    id: 'a',
    body: standingBody(a.port.body, bodies.moving),
    pose: { point: addScaled(ends.a.mouthPoint, ends.a.hoseAxis, tailMm.a), direction: ends.a.hoseAxis },
    atMm: setting.a.end.shoulderToMouthMm + tailMm.a,
  };
  const last: Hold = {
    id: 'b',
    body: standingBody(b.port.body, bodies.moving),
    pose: {
      point: addScaled(ends.b.mouthPoint, ends.b.hoseAxis, tailMm.b),
      direction: scale(ends.b.hoseAxis, -1),
    },
    atMm: lay.cutLengthMm - setting.b.end.shoulderToMouthMm - tailMm.b,
  };
  const held = lay.supports.filter((s) => s.kind !== 'waypoint');
  const stated = (id: string): string | undefined => run.supports.find((s) => s.id === id)?.body;
  const own = held.filter((s) => !s.proposed).map((s) => holdOf(s, standingBody(stated(s.id), bodies.moving)));
  const fixed = inOrder([first, ...own, last]);
  const proposed = held.filter((s) => s.proposed).map((s) => holdOf(s, bodyForClamp(s, fixed, bodies)));
  return inOrder([...fixed, ...proposed]);
}

function inOrder(holds: readonly Hold[]): Hold[] {
  return [...holds].sort((x, y) => x.atMm - y.atMm);
}

function holdOf({ id, at, axis }: LaySupport, body: string): Hold {
  return { id, body, pose: { point: at.point, direction: axis }, atMm: at.arcLengthMm };
}

/** What a clamp that the program asks for is best fixed to: what holds the hose on both sides of it, else what is nearest. */
function bodyForClamp({ at }: LaySupport, fixed: readonly Hold[], { nearest }: Bodies): string {
  const before = fixed.filter((h) => h.atMm <= at.arcLengthMm).at(-1);
  const after = fixed.find((h) => h.atMm > at.arcLengthMm);
  return before !== undefined && before.body === after?.body ? before.body : nearest(at.point);
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
