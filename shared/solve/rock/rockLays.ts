import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, Rock, RockExtreme, RockPose } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { buildTubeField } from '../bay/tubeField.ts';
import type { BodyBay } from './bodyBays.ts';
import type { HeldHose } from './heldHose.ts';
import { goTogether, heldHoses, type LainHose, lainAt } from './hosesAtExtreme.ts';
import { measuredExtreme } from './measuredExtreme.ts';
import { rockPoses } from './rockPoses.ts';
import type { Surroundings } from './surroundings.ts';
import { type TightAt, tightAt } from './tightAt.ts';
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
      return hose === undefined ? still : { ...still, rock: rockOf(hose, tightAt(project, hose, poses), extremes) };
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

/** Every hose at one extreme: laid, then measured. */
function extremesAt(
  hoses: readonly HeldHose[],
  isAsked: (run: string) => boolean,
  project: Project,
  bays: readonly BodyBay[],
  pose: RockPose,
  watch: Watch,
): [string, RockExtreme][] {
  const lain = lainAt(hoses, project, bays, pose, partOf(watch, 0, 0.5));
  const around = { project, bays, others: buildTubeField(lain.flatMap(({ tubes }) => tubes)) };
  return lain.flatMap((one, i): [string, RockExtreme][] => {
    const { hose } = one;
    if (!isAsked(hose.setting.run)) return [];
    stopIfCancelled(watch);
    watch.report({ fraction: 0.5 + (0.5 * i) / hoses.length, doing: `measuring ${hose.resolved.run.name}` });
    return [[hose.setting.run, measuredAmong(one, lain, around, pose)]];
  });
}

/** One of the hoses at an extreme, measured against the others. around: with the tubes of all of them, built once for whoever is measured. */
export function measuredAmong(
  { hose, rocked }: LainHose,
  lain: readonly LainHose[],
  around: Omit<Surroundings, 'among'>,
  pose: RockPose,
): RockExtreme {
  const others = lain.filter((other) => other.hose !== hose && !goTogether(other.hose, hose));
  const among = new Set(others.map((other) => other.hose.setting.run));
  return measuredExtreme(hose, rocked, pose, { ...around, among });
}

/** What is told of a hose over all extremes. tight: as `tightAt` answers. */
export function rockOf(hose: HeldHose, tight: TightAt | undefined, extremes: readonly RockExtreme[]): Rock {
  return {
    carried: hose.carriedBy !== undefined,
    holds: hose.holds.map(({ id, body }) => ({ id, body })),
    extremes: [...extremes],
    worst: worstOf(extremes),
    ...(tight === undefined ? {} : { tightAt: tight }),
  };
}
