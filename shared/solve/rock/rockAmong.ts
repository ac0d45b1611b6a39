import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, RockExtreme, RockPose } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import type { BodyBay } from './bodyBays.ts';
import type { HeldHose } from './heldHose.ts';
import { goTogether, heldHoses, type LainHose, lainAt } from './hosesAtExtreme.ts';
import { withOneMore } from './measuredExtreme.ts';
import { measuredAmong, rockOf } from './rockLays.ts';
import { rockPoses } from './rockPoses.ts';
import { type TightAt, tightAt } from './tightAt.ts';

/** How the other hoses lie at the extremes, kept from one rocking among them to the next. */
export interface RockMemory {
  others?: { readonly key: string; readonly known: OthersRocked };
}

/** All hoses but one: where each goes tight, and all of them at each extreme. */
interface OthersRocked {
  readonly hoses: readonly { readonly hose: HeldHose; readonly tight: TightAt | undefined }[];
  readonly extremes: readonly OthersAtExtreme[];
}

interface OthersAtExtreme {
  readonly pose: RockPose;
  readonly lain: readonly LainHose[];
  readonly field: TubeField;
  /** in the order of `lain`, measured among themselves */
  readonly told: readonly RockExtreme[];
}

/**
 * As `rockLays`, and the same lays, for one run that is laid in many ways among others that stay as they are: what the
 * others do without it is found once, and kept in `memory` as long as it is asked for again. bays: those of the project, whatever it changes.
 * onlyIt: the others keep what is told of them.
 */
export function rockAmong(
  resolved: ResolvedProject,
  bays: readonly BodyBay[],
  lays: readonly Lay[],
  run: string,
  memory: RockMemory,
  watch: Watch,
  onlyIt = false,
): Lay[] {
  const { project } = resolved;
  const poses = rockPoses(project);
  const own =
    poses.length === 0
      ? []
      : heldHoses(
          onlyRuns(resolved, (id) => id === run),
          lays,
          bays,
          poses,
          watch,
        );
  const [hose] = own;
  const known = othersOf(resolved, bays, lays, run, poses, memory, partOf(watch, 0, 0.5));
  const order = resolved.runs.map((r) => r.run.id);
  const found = known.extremes.map((others, i) => {
    const part = partOf(watch, 0.5 + (0.5 * i) / poses.length, 0.5 + (0.5 * (i + 1)) / poses.length);
    return withIt(others, hose, { project, bays, order }, onlyIt, part);
  });
  return lays.map((lay) => {
    if (onlyIt && lay.run !== run) return lay;
    const { rock: _, ...still } = lay;
    const other = known.hoses.findIndex((o) => o.hose.setting.run === lay.run);
    const extremes = found.flatMap(({ its, theirs }) => (lay.run === run ? its : theirs[other]) ?? []);
    const held = lay.run === run ? hose : known.hoses[other]?.hose;
    if (held === undefined) return still;
    const tight = lay.run === run ? tightAt(project, held, poses) : known.hoses[other]?.tight;
    return { ...still, rock: rockOf(held, tight, extremes) };
  });
}

interface Around {
  readonly project: Project;
  readonly bays: readonly BodyBay[];
  readonly order: readonly string[];
}

/** What is told at one extreme once the run lies there too. */
function withIt(
  { pose, lain, field, told }: OthersAtExtreme,
  hose: HeldHose | undefined,
  { project, bays, order }: Around,
  onlyIt: boolean,
  watch: Watch,
): { readonly its?: RockExtreme; readonly theirs: readonly RockExtreme[] } {
  if (hose === undefined) return { theirs: told };
  const [it] = lainAt([hose], project, bays, pose, watch) as [LainHose];
  const its = measuredAmong(it, lain, { project, bays, others: field }, pose);
  if (onlyIt) return { its, theirs: told };
  const others = buildTubeField(it.tubes);
  const theirs = lain.map((other, i) =>
    goTogether(other.hose, hose)
      ? (told[i] as RockExtreme)
      : withOneMore(other.hose, other.rocked, told[i] as RockExtreme, { project, others }, order),
  );
  return { its, theirs };
}

/** What is known of the others, found anew where anything is not as it was. */
function othersOf(
  resolved: ResolvedProject,
  bays: readonly BodyBay[],
  lays: readonly Lay[],
  run: string,
  poses: readonly RockPose[],
  memory: RockMemory,
  watch: Watch,
): OthersRocked {
  const others = onlyRuns(resolved, (id) => id !== run);
  const still = lays.filter((l) => l.run !== run).map(asRocked);
  const key = JSON.stringify([run, { ...others.project, runs: [] }, others.runs, still]);
  if (memory.others?.key !== key) memory.others = { key, known: othersRocked(others, bays, lays, poses, watch) };
  return memory.others.known;
}

/** A lay without what is told of it towards other runs, and what is measured once it lies: it is not rocked by that. */
function asRocked({ clearances, profile, breathing, ...lay }: Lay): Partial<Lay> {
  const { rock, tolerance, built, flow, heat, hands, taper, timingsMs, ...rest } = lay;
  return rest;
}

function othersRocked(
  others: ResolvedProject,
  bays: readonly BodyBay[],
  lays: readonly Lay[],
  poses: readonly RockPose[],
  watch: Watch,
): OthersRocked {
  const { project } = others;
  const hoses = poses.length === 0 ? [] : heldHoses(others, lays, bays, poses, watch);
  const extremes = poses.map((pose, i) => {
    stopIfCancelled(watch);
    const lain = lainAt(hoses, project, bays, pose, partOf(watch, i / poses.length, (i + 1) / poses.length));
    const field = buildTubeField(lain.flatMap(({ tubes }) => tubes));
    const around = { project, bays, others: field };
    return { pose, lain, field, told: lain.map((one) => measuredAmong(one, lain, around, pose)) };
  });
  return { hoses: hoses.map((hose) => ({ hose, tight: tightAt(project, hose, poses) })), extremes };
}

function onlyRuns({ project, runs }: ResolvedProject, isOne: (run: string) => boolean): ResolvedProject {
  return { project, runs: runs.filter((r) => isOne(r.run.id)) };
}
