import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { AdapterPose, Lay, Rock, RockExtreme, RockPose } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { movePoint } from '../../geometry/rigidMotion.ts';
import { buildTubeField, type Tube } from '../bay/tubeField.ts';
import { centrelineOf } from '../layRun/centreline.ts';
import { type StandingHose, tubesOfLay } from '../layRun/tubesOfLay.ts';
import { type BodyBay, movingBodies, nearestBody } from './bodyBays.ts';
import { type Bodies, type HeldHose, heldHose } from './heldHose.ts';
import { letGoAtRest } from './letGo.ts';
import { measuredExtreme } from './measuredExtreme.ts';
import { type RockedHose, rockedHose } from './rockedHose.ts';
import { rockPoses } from './rockPoses.ts';
import { tightAt } from './tightAt.ts';
import { worstOf } from './worstOf.ts';

/**
 * Adds to each lay how its hose lies when the bodies of the project stand at the extremes of their motion: cut and clocked
 * as it is, ends tightened, laid again from its shape at rest. At each extreme all hoses are laid first, each in the moved bay,
 * and then measured against the bay and against each other. Lays that show no hose stay as they are; so do all where
 * nothing moves. bays: of the same project, from `bodyBays`. only: the one run to be told of anew, the others keep what is told
 * of them. The same input gives the same answer on every host.
 */
export function rockLays(
  resolved: ResolvedProject,
  bays: readonly BodyBay[],
  lays: readonly Lay[],
  watch: Watch,
  only?: string,
): Lay[] {
  const plan = rockPlan(resolved, bays, lays, watch, only);
  const { tasks } = plan;
  return plan.told(
    tasks.map((task, i) =>
      doRockTask(resolved.project, bays, task, partOf(watch, i / tasks.length, (i + 1) / tasks.length)),
    ),
  );
}

/** All hoses at one extreme, in words that can be sent to another worker: plain data. */
export interface RockTask {
  readonly how: 'rock';
  readonly pose: RockPose;
  readonly hoses: readonly HeldHose[];
  /** the one run to be told of; absent = all */
  readonly only?: string;
}

/** How runs lie at one extreme. */
export type RockedRuns = readonly (readonly [run: string, extreme: RockExtreme])[];

/** The extremes of a rocking bay, which do not depend on each other, and what is told when all are done, in order. */
export interface RockPlan {
  readonly tasks: readonly RockTask[];
  told(done: readonly RockedRuns[]): Lay[];
}

/** As `rockLays`, with the work at the extremes left to others. */
export function rockPlan(
  resolved: ResolvedProject,
  bays: readonly BodyBay[],
  lays: readonly Lay[],
  watch: Watch,
  only?: string,
): RockPlan {
  const { project } = resolved;
  const poses = rockPoses(project);
  const hoses = poses.length === 0 ? [] : heldHoses(resolved, lays, bays, poses, watch);
  const told = (done: readonly RockedRuns[]): Lay[] =>
    lays.map((lay) => {
      if (only !== undefined && lay.run !== only) return lay;
      const { rock: _, ...still } = lay;
      const hose = hoses.find((h) => h.setting.run === lay.run);
      const extremes = done.flat().flatMap(([run, extreme]) => (run === lay.run ? [extreme] : []));
      return hose === undefined ? still : { ...still, rock: rockOf(project, hose, poses, extremes) };
    });
  const tasks = poses.map((pose): RockTask => ({ how: 'rock', pose, hoses, ...(only === undefined ? {} : { only }) }));
  return { tasks, told };
}

/** Does one task: a pure function of project, bays and task, whichever worker does it. */
export function doRockTask(
  project: Project,
  bays: readonly BodyBay[],
  { pose, hoses, only }: RockTask,
  watch: Watch,
): RockedRuns {
  return extremesAt(hoses, (run) => only === undefined || run === only, project, bays, pose, watch);
}

function heldHoses(
  { project, runs }: ResolvedProject,
  lays: readonly Lay[],
  bays: readonly BodyBay[],
  poses: readonly RockPose[],
  watch: Watch,
): HeldHose[] {
  const bodies: Bodies = {
    moving: movingBodies(poses),
    nearest: (point) => nearestBody(bays, point),
  };
  return runs.flatMap((run) => {
    const lay = lays.find((l) => l.run === run.run.id);
    const hose = lay === undefined ? undefined : heldHose(project, run, lay, bodies);
    return hose === undefined || hose.spans.length === 0 ? [] : [letGoAtRest(hose, bays, watch)];
  });
}

/** Every hose at one extreme: laid, then measured. */
function extremesAt(
  hoses: readonly HeldHose[],
  isAsked: (run: string) => boolean,
  project: Project,
  bays: readonly BodyBay[],
  pose: RockPose,
  watch: Watch,
): [string, RockExtreme][] {
  const lain = hoses.map((hose, i) => {
    stopIfCancelled(watch);
    watch.report({ fraction: (0.5 * i) / hoses.length, doing: `rocking ${hose.resolved.run.name}` });
    const rocked = rockedHose(hose, project, bays, pose, watch);
    return { hose, rocked, tubes: tubesThen(hose, rocked) };
  });
  // One field of all, so that what is built for one of them serves whoever is measured against it.
  const all = buildTubeField(lain.flatMap(({ tubes }) => tubes));
  return lain.flatMap(({ hose, rocked }, i): [string, RockExtreme][] => {
    if (!isAsked(hose.setting.run)) return [];
    stopIfCancelled(watch);
    watch.report({ fraction: 0.5 + (0.5 * i) / hoses.length, doing: `measuring ${hose.resolved.run.name}` });
    const others = lain.filter((o) => o.hose !== hose && !goTogether(o.hose, hose));
    const around = { project, bays, others: all, among: new Set(others.map((o) => o.hose.setting.run)) };
    return [[hose.setting.run, measuredExtreme(hose, rocked, pose, around)]];
  });
}

/** Two hoses carried by the same body keep their distance, which was measured at rest. */
function goTogether(a: HeldHose, b: HeldHose): boolean {
  return a.carriedBy !== undefined && a.carriedBy === b.carriedBy;
}

/** A hose and its ends as obstacles where they stand then; where it does not reach there is no hose, only its ends. */
function tubesThen(hose: HeldHose, { curve, motions }: RockedHose): Tube[] {
  const { lay } = hose.taken;
  const first = hose.spans[0];
  const last = hose.spans[hose.spans.length - 1];
  const ends = {
    a: movedEnd(lay.ends.a, first?.from.body ?? '', motions),
    b: movedEnd(lay.ends.b, last?.to.body ?? '', motions),
  };
  const standing: StandingHose = {
    run: lay.run,
    outsideDiameterMm: lay.outsideDiameterMm,
    centreline: curve === undefined ? { points: [], arcLengthMm: [] } : centrelineOf(curve),
    ends,
  };
  return tubesOfLay(standing, hose.resolved);
}

type EndPlaces = StandingHose['ends']['a'];

function movedEnd(end: EndPlaces, body: string, motions: RockedHose['motions']): EndPlaces {
  const moved = (p: EndPlaces['seatPoint']): EndPlaces['seatPoint'] => {
    const [x, y, z] = movePoint(motions(body), p);
    return [x, y, z];
  };
  const movedAdapter = (adapter: AdapterPose): AdapterPose => ({
    ...adapter,
    points: adapter.points.map(moved),
    ...(adapter.branch === undefined ? {} : { branch: adapter.branch.map(moved) }),
  });
  return {
    seatPoint: moved(end.seatPoint),
    bendPoint: moved(end.bendPoint),
    shoulderPoint: moved(end.shoulderPoint),
    mouthPoint: moved(end.mouthPoint),
    ...(end.body === undefined ? {} : { body: end.body.map(moved) }),
    ...(end.adapters === undefined ? {} : { adapters: end.adapters.map(movedAdapter) }),
  };
}

function rockOf(project: Project, hose: HeldHose, poses: readonly RockPose[], extremes: RockExtreme[]): Rock {
  const tight = tightAt(project, hose, poses);
  return {
    carried: hose.carriedBy !== undefined,
    holds: hose.holds.map(({ id, body }) => ({ id, body })),
    extremes,
    worst: worstOf(extremes),
    ...(tight === undefined ? {} : { tightAt: tight }),
  };
}
