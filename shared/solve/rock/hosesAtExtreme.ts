import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { AdapterPose, Lay, RockPose } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { movePoint } from '../../geometry/rigidMotion.ts';
import type { Tube } from '../bay/tubeField.ts';
import { centrelineOf } from '../layRun/centreline.ts';
import { type StandingHose, tubesOfLay } from '../layRun/tubesOfLay.ts';
import { type BodyBay, movingBodies, nearestBody } from './bodyBays.ts';
import { type Bodies, type HeldHose, heldHose } from './heldHose.ts';
import { letGoAtRest } from './letGo.ts';
import { type RockedHose, rockedHose } from './rockedHose.ts';

/** The hoses of these lays as the extremes take them: held, and let go at rest; those without a hose are left out. In the project's order. */
export function heldHoses(
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

/** A hose as it lies at one extreme, and what it is there to the others. */
export interface LainHose {
  readonly hose: HeldHose;
  readonly rocked: RockedHose;
  readonly tubes: readonly Tube[];
}

/** Every hose at one extreme, each for itself. */
export function lainAt(
  hoses: readonly HeldHose[],
  project: Project,
  bays: readonly BodyBay[],
  pose: RockPose,
  watch: Watch,
): LainHose[] {
  return hoses.map((hose, i) => {
    stopIfCancelled(watch);
    watch.report({ fraction: i / hoses.length, doing: `rocking ${hose.resolved.run.name}` });
    const rocked = rockedHose(hose, project, bays, pose, watch);
    return { hose, rocked, tubes: tubesThen(hose, rocked) };
  });
}

/** Two hoses carried by the same body keep their distance, which was measured at rest. */
export function goTogether(a: HeldHose, b: HeldHose): boolean {
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
