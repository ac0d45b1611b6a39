import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { degreesToRadians, radiansToDegrees, wrapDegrees } from '../../base/units.ts';
import { distance } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { Built, BuiltPose, Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { CHASSIS_BODY } from '../../document/project/schema.ts';
import { AT_REST } from '../../geometry/rigidMotion.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { clockMissDeg } from '../ends/clock.ts';
import { centrelineOf } from '../layRun/centreline.ts';
import { measureEndRoom } from '../layRun/measureEndRoom.ts';
import { type EndSetting, fittedAt, type RunSetting } from '../layRun/runSetting.ts';
import { tubesOf } from '../layRun/tubesOf.ts';
import { type HeldHose, type HeldSpan, heldHose } from '../rock/heldHose.ts';
import { measuredHose } from '../rock/measuredExtreme.ts';
import type { Surroundings } from '../rock/surroundings.ts';
import { faultAtPose } from '../taper/faultAtPose.ts';
import { type OwnClocks, refittedHose } from '../taper/refittedHose.ts';

/** How a hose was made. */
export interface MadeAs {
  readonly name: string;
  readonly cutLengthMm: number;
  /** between two angled ends; not read where an end is straight */
  readonly clockDeg?: number;
}

/** A laid hose, ready to be made otherwise than planned. */
export interface PlannedHose {
  readonly hose: HeldHose;
  readonly around: Surroundings;
  readonly bay: BayIndex;
}

/** Ends stand on bodies of their own, which do not move, so that slack is told of the stretches between them. */
const BODIES = { a: 'built-a', b: 'built-b' } as const;

/** A laid hose with what it lies among. undefined where there is no hose to make. laid: every lay of the project. */
export function plannedHose(
  { resolved, bay }: { readonly resolved: ResolvedProject; readonly bay: BayIndex },
  run: ResolvedRun,
  lay: Lay,
  laid: ReadonlyMap<string, Lay>,
): PlannedHose | undefined {
  const { project } = resolved;
  const bodied = (side: 'a' | 'b') => ({ ...run[side], port: { ...run[side].port, body: BODIES[side] } });
  const bodies = { moving: new Set<string>(Object.values(BODIES)), nearest: () => CHASSIS_BODY.id };
  const hose = heldHose(project, { ...run, a: bodied('a'), b: bodied('b') }, lay, bodies, true);
  if (hose === undefined || hose.spans.length === 0) return undefined;
  const around = { project, bays: [{ body: CHASSIS_BODY.id, bay }], others: tubesOf(resolved, laid, run.run.id) };
  return { hose, around, bay };
}

/** mm and deg: two answers whose faults differ less are alike, and the one with less twist is told. */
const ALIKE_MM = 0.05;
/** deg. Less twist than this is none. */
const NO_TWIST_DEG = 0.5;

/**
 * How a hose lies that was made `as` it was, fitted to the ports of its plan: ends at their planned own clocks, clamps where they are; the
 * length that it has more or less is shared by its stretches, and what its clock is off wrings it. Where
 * that breaks something or wrings it and an end swivels, the swivel is turned to where the hose comes to rest before its nut is tight, and
 * the better of the two is told. Method: the rod between its holds, from its planned shape, its proofs of radius and
 * clearance; ends turned as for taper threads. A hose with clamps takes its twist between its ends as a whole.
 */
export function builtHose(planned: PlannedHose, as: MadeAs, watch: Watch): Built {
  const made = madeHose(planned.hose, as);
  const { setting } = made;
  const { a, b } = made.taken.lay.ends;
  const own: OwnClocks = { a: degreesToRadians(a.ownClockDeg), b: degreesToRadians(b.ownClockDeg) };
  const still: RunSetting = { ...setting, a: heldAt(setting.a, own.a), b: heldAt(setting.b, own.b) };
  const first = lain(planned, made, still, own, as, watch);
  const isWrung = Math.abs(first.twistDeg ?? 0) > NO_TWIST_DEG;
  if (!(setting.a.turns || setting.b.turns) || (faultAtPose(setting, asTaper(first)) === 0 && !isWrung)) return first;
  const second = lain(planned, made, setting, own, as, watch);
  return isBetter(setting, second, first) ? second : first;
}

function isBetter(setting: RunSetting, one: Built, other: Built): boolean {
  const gain = faultAtPose(setting, asTaper(other)) - faultAtPose(setting, asTaper(one));
  return Math.abs(gain) > ALIKE_MM ? gain > 0 : Math.abs(one.twistDeg ?? 0) < Math.abs(other.twistDeg ?? 0);
}

function asTaper(pose: BuiltPose): Parameters<typeof faultAtPose>[1] {
  return { ...pose, clocks: [] };
}

function chordOf({ from, to }: HeldSpan): number {
  return distance(from.pose.point, to.pose.point);
}

function heldAt(end: EndSetting, clockRad: number): EndSetting {
  return { ...end, turns: false, clockRad };
}

/** The hose as it was made: its clock, and its length, the difference shared by its stretches as each is longer than its chord: a straight one takes none. */
function madeHose(hose: HeldHose, { cutLengthMm, clockDeg }: MadeAs): HeldHose {
  const { lay } = hose.taken;
  const moreMm = cutLengthMm - lay.cutLengthMm;
  const over = hose.spans.map((span) => Math.max(0, span.lengthMm - chordOf(span)));
  const overMm = over.reduce((sum, mm) => sum + mm, 0);
  const wholeMm = hose.spans.reduce((sum, span) => sum + span.lengthMm, 0);
  const share = (span: HeldSpan, i: number): number =>
    overMm > SAME_POINT_MM ? (over[i] as number) / overMm : span.lengthMm / wholeMm;
  const spans = hose.spans.map((span, i): HeldSpan => ({ ...span, lengthMm: span.lengthMm + moreMm * share(span, i) }));
  const clock = lay.clock.kind === 'angle' && clockDeg !== undefined ? { ...lay.clock, deg: clockDeg } : lay.clock;
  const made: Lay = { ...lay, cutLengthMm, liveLengthMm: lay.liveLengthMm + moreMm, clock };
  return { ...hose, spans, taken: { ...hose.taken, lay: made } };
}

function lain(
  { around, bay }: PlannedHose,
  hose: HeldHose,
  setting: RunSetting,
  own: OwnClocks,
  as: MadeAs,
  watch: Watch,
): Built {
  const { lay } = hose.taken;
  const slackLeftMm = lay.liveLengthMm - lay.tautLengthMm;
  const short = Math.max(0, ...hose.spans.map((span) => chordOf(span) - span.lengthMm));
  const missingMm = short > SAME_POINT_MM ? short : 0;
  const deg = (rad: number): number => wrapDegrees(radiansToDegrees(rad));
  const told = (clocks: OwnClocks) => ({
    name: as.name,
    cutLengthMm: as.cutLengthMm,
    ...(lay.clock.kind === 'angle' ? { clockDeg: lay.clock.deg } : {}),
    ownClockDeg: { a: deg(clocks.a), b: deg(clocks.b) },
    room: roomOf(setting, clocks, bay),
  });
  const refit =
    missingMm > 0 ? undefined : refittedHose(hose, around.bays, () => AT_REST, BODIES, setting, own, watch, true);
  if (refit === undefined) {
    const outcome = missingMm > 0 ? 'too-short' : 'unsettled';
    return { ...told(own), outcome, slackLeftMm, ...(missingMm > 0 ? { missingMm } : {}) };
  }
  const { rocked, clocks } = refit;
  const measured = measuredHose(hose, rocked, around);
  const strain = wringOf(hose, rocked.curve, setting, clocks);
  return {
    ...told(clocks),
    ...measured,
    ...strain,
    ...(rocked.curve === undefined ? {} : { centreline: centrelineOf(rocked.curve) }),
  };
}

/** What is told of the twist: what the clock is off from what this shape asks, and the torque that takes over the hose's live length. */
function wringOf(
  { taken: { lay }, torsionalStiffnessNmm2 }: HeldHose,
  curve: Parameters<typeof clockMissDeg>[0] | undefined,
  setting: RunSetting,
  clocks: OwnClocks,
): { twistDeg?: number; torqueNmm?: number } {
  if (lay.clock.kind === 'free' || curve === undefined) return { twistDeg: 0, torqueNmm: 0 };
  const twistDeg = clockMissDeg(
    curve,
    fittedAt(setting.a, clocks.a).up,
    fittedAt(setting.b, clocks.b).up,
    lay.clock.deg,
  );
  return { twistDeg, torqueNmm: (torsionalStiffnessNmm2 * degreesToRadians(twistDeg)) / lay.liveLengthMm };
}

function roomOf(setting: RunSetting, clocks: OwnClocks, bay: BayIndex): BuiltPose['room'] {
  const [a, b] = [measureEndRoom(setting.a, clocks.a, bay), measureEndRoom(setting.b, clocks.b, bay)];
  return { ...(a === undefined ? {} : { a }), ...(b === undefined ? {} : { b }) };
}
