import { degreesToRadians, radiansToDegrees, wrapDegrees } from '../../base/units.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, Taper, TaperPose } from '../../document/lay/schema.ts';
import { type ResolvedProject, type ResolvedRun, seatedPort } from '../../document/project/resolve.ts';
import { CHASSIS_BODY } from '../../document/project/schema.ts';
import { frameMotion } from '../../geometry/frameMotion.ts';
import { AT_REST } from '../../geometry/rigidMotion.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { clockMissDeg } from '../ends/clock.ts';
import { measureEndRoom } from '../layRun/measureEndRoom.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { fittedAt, type RunSetting } from '../layRun/runSetting.ts';
import { tubesOf } from '../layRun/tubesOf.ts';
import { type HeldHose, heldHose } from '../rock/heldHose.ts';
import { measuredHose } from '../rock/measuredExtreme.ts';
import type { Motions } from '../rock/movedBay.ts';
import { movedHose, type RockedHose } from '../rock/rockedHose.ts';
import type { Surroundings } from '../rock/surroundings.ts';
import { worstOf } from '../rock/worstOf.ts';
import { faultAtPose } from './faultAtPose.ts';
import { type OwnClocks, refittedHose } from './refittedHose.ts';
import { clocksOfStack, namedPose, type TaperRange, taperClocks, taperRanges, toldRanges } from './taperClocks.ts';

/** What a hose on taper threads is turned in. */
export interface TaperContext {
  readonly resolved: ResolvedProject;
  /** as scanned: bodies stand still */
  readonly bay: BayIndex;
}

/**
 * Adds to each lay how its hose lies when the taper threads of its ports come tight at other clocks of their ranges: the same
 * cut length and clock, fitted anew. The port's seat goes round rigidly with what is screwed on above the taper, and the
 * hose is laid again between its ends from its shape in the middle, tails straight, clamps where they are and what lies beyond
 * the nearest clamp as it lies. First with every end at its own clock of the lay; where that does not fit and an end swivels,
 * with the swivels turned to where the hose comes to rest, and the better of the two is told. Lays that show no hose
 * stay as they are, and so do runs with no taper. only: the one run to be told of anew. The same input gives the same answer.
 */
export function taperLays(context: TaperContext, lays: readonly Lay[], watch: Watch, only?: string): Lay[] {
  const laid = new Map(lays.map((lay) => [lay.run, lay]));
  return lays.map((lay, i) => {
    if (only !== undefined && lay.run !== only) return lay;
    const { taper: _, ...plain } = lay;
    const run = context.resolved.runs.find((r) => r.run.id === lay.run);
    const taper = run && taperOf(context, run, plain, laid, partOf(watch, i / lays.length, (i + 1) / lays.length));
    return taper === undefined ? plain : { ...plain, taper };
  });
}

function taperOf(
  { resolved, bay }: TaperContext,
  run: ResolvedRun,
  lay: Lay,
  laid: ReadonlyMap<string, Lay>,
  watch: Watch,
): Taper | undefined {
  const ranges = taperRanges(run);
  const hose = ranges.length === 0 ? undefined : hoseOnTapers(resolved, run, lay);
  if (hose === undefined || hose.spans.length === 0) return undefined;
  const bays = [{ body: CHASSIS_BODY.id, bay }];
  const around: Surroundings = { project: resolved.project, bays, others: tubesOf(resolved, laid, run.run.id) };
  const turning: Turning = { run, hose, ranges, around, bay };
  const clocks = taperClocks(ranges);
  const poses = clocks.map((clocksDeg, i) => {
    stopIfCancelled(watch);
    watch.report({ fraction: i / clocks.length, doing: `turning the taper threads of ${run.run.name}` });
    return poseAt(turning, clocksDeg, watch);
  });
  const { slackLeft, minRadius, clearance, twist } = worstOf(poses);
  const room = tightestRoom(poses);
  const worst = { slackLeft, minRadius, clearance, twist, room };
  return {
    ranges: toldRanges(ranges),
    poses,
    worst: Object.fromEntries(Object.entries(worst).filter(([, n]) => n !== undefined)) as Taper['worst'],
  };
}

const BODIES = { a: 'taper-a', b: 'taper-b' } as const;

/** A laid hose as one whose ends are fixed to bodies of their own where they go round with a taper or turn, while all else stands. */
function hoseOnTapers({ project }: ResolvedProject, run: ResolvedRun, lay: Lay): HeldHose | undefined {
  const bodied = (side: 'a' | 'b') => ({ ...run[side], port: { ...run[side].port, body: BODIES[side] } });
  const setting = runSetting(project, run);
  const tapered = new Set(taperRanges(run).map(({ end }) => end));
  const moving = new Set((['a', 'b'] as const).filter((s) => tapered.has(s) || setting[s].turns).map((s) => BODIES[s]));
  const bodies = { moving: moving as ReadonlySet<string>, nearest: () => CHASSIS_BODY.id };
  return heldHose(project, { ...run, a: bodied('a'), b: bodied('b') }, lay, bodies, true);
}

interface Turning {
  readonly run: ResolvedRun;
  readonly hose: HeldHose;
  readonly ranges: readonly TaperRange[];
  readonly around: Surroundings;
  readonly bay: BayIndex;
}

/** Where the tapered ports stand at clocks, deg. */
function motionsOf({ run, ranges }: Turning, clocksDeg: readonly number[]): Motions {
  const motion = (end: 'a' | 'b') => {
    const { stack, port } = run[end];
    if (stack === undefined) return AT_REST;
    return frameMotion(port, seatedPort(stack.bare, stack.adapters, clocksOfStack(ranges, clocksDeg, end)).port);
  };
  const [a, b] = [motion('a'), motion('b')];
  return (body) => (body === BODIES.a ? a : body === BODIES.b ? b : AT_REST);
}

/** The run as it is with the taper threads at clocks, deg, in numbers. */
function settingOf({ run, ranges, around }: Turning, clocksDeg: readonly number[]): RunSetting {
  const turned = (end: 'a' | 'b') => {
    const { stack } = run[end];
    if (stack === undefined) return run[end];
    return { ...run[end], ...seatedPort(stack.bare, stack.adapters, clocksOfStack(ranges, clocksDeg, end)) };
  };
  return runSetting(around.project, { ...run, a: turned('a'), b: turned('b') });
}

function poseAt(turning: Turning, clocksDeg: readonly number[], watch: Watch): TaperPose {
  const { hose, ranges, around } = turning;
  const { ends } = hose.taken.lay;
  const setting = settingOf(turning, clocksDeg);
  const share = (part: number): number[] =>
    ranges.map(({ laidAtDeg }, i) => laidAtDeg + ((clocksDeg[i] as number) - laidAtDeg) * part);
  const asLaid: OwnClocks = {
    a: degreesToRadians(ends.a.ownClockDeg),
    b: degreesToRadians(ends.b.ownClockDeg),
  };
  const isWrung = hose.taken.lay.clock.kind === 'angle';
  const carried = movedHose(hose, around.bays, (part) => motionsOf(turning, share(part)), isWrung, watch);
  const named = namedPose(ranges, clocksDeg);
  const first = told(turning, { ...carried, setting }, asLaid, named);
  if (faultAtPose(setting, first) === 0 || !(setting.a.turns || setting.b.turns)) return first;
  const refit = refittedHose(hose, around.bays, carried.motions, BODIES, setting, asLaid, watch);
  if (refit === undefined) return first;
  const second = told(turning, refit.rocked, refit.clocks, named);
  return faultAtPose(setting, second) < faultAtPose(setting, first) ? second : first;
}

function told(
  { hose, around, bay }: Turning,
  rocked: RockedHose,
  clocks: OwnClocks,
  named: Pick<TaperPose, 'name' | 'clocks'>,
): TaperPose {
  const { setting } = rocked;
  const room = { a: measureEndRoom(setting.a, clocks.a, bay), b: measureEndRoom(setting.b, clocks.b, bay) };
  const deg = (rad: number): number => wrapDegrees(radiansToDegrees(rad));
  const twistDeg = twistOf(hose, rocked, clocks);
  const { twistDeg: _, torqueNmm: __, ...measured } = measuredHose(hose, rocked, around);
  return {
    ...named,
    ...measured,
    ...(twistDeg === undefined ? {} : { twistDeg }),
    ownClockDeg: { a: deg(clocks.a), b: deg(clocks.b) },
    room: {
      ...(room.a === undefined ? {} : { a: room.a }),
      ...(room.b === undefined ? {} : { b: room.b }),
    },
  };
}

/** By how much a hose between two angled ends is wrung there, deg: the clock it was made with less the one it would want. */
function twistOf({ taken }: HeldHose, { curve, setting }: RockedHose, clocks: OwnClocks): number | undefined {
  const { clock } = taken.lay;
  if (clock.kind === 'free' || curve === undefined) return undefined;
  return clockMissDeg(curve, fittedAt(setting.a, clocks.a).up, fittedAt(setting.b, clocks.b).up, clock.deg);
}

function tightestRoom(poses: readonly TaperPose[]): number | undefined {
  let worst: { readonly i: number; readonly roomMm: number } | undefined;
  poses.forEach(({ room }, i) => {
    for (const end of [room.a, room.b])
      if (end !== undefined && (worst === undefined || end.roomMm < worst.roomMm)) worst = { i, roomMm: end.roomMm };
  });
  return worst?.i;
}
