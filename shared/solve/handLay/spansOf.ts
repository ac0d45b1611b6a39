import { AT_REST_RESIDUAL, SAME_POINT_MM } from '../../base/tolerances.ts';
import type { Watch } from '../../base/watch.ts';
import type { Lock } from '../../document/project/schema.ts';
import { type CubicCurve, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { lockedStretch } from '../layRun/lockedStretch.ts';
import { type EndSetting, nearestClockOf, type RunSetting, rodEnd } from '../layRun/runSetting.ts';
import type { ContactField, RodEnd, RodShape } from '../rod/index.ts';
import type { Anchor } from './anchors.ts';
import { type HandSpan, type LaidSpan, laySpan } from './handSpan.ts';
import { type Side, sideLengths } from './sideLengths.ts';
import { guessBetween, type TakenLay } from './takenLay.ts';

/** A stretch between two anchors that hold the hose, laid. */
export interface Stretch {
  readonly from: Anchor;
  readonly to: Anchor;
  readonly curve: CubicCurve;
  readonly pulls: readonly Anchor[];
  /** of each pull, as a part of the stretch's length */
  readonly fractions: readonly number[];
  /** absent in a locked stretch */
  readonly laid?: LaidSpan;
  readonly atRest: boolean;
}

export interface LaidStretches {
  readonly stretches: readonly Stretch[];
  /** how much longer the hose was made than it was cut, so that it reaches; mm, 0 for a hose not yet cut */
  readonly tooShortMm: number;
}

/** The last shape of each stretch, and what it was laid from. */
export type SpanMemory = Map<string, { readonly inputs: string; readonly laid: LaidSpan }>;

/** How the ends of the run stand: clocks in rad, changed as swivels turn. */
export interface StandingEnds {
  a: number;
  b: number;
  /** whether swivels may turn */
  readonly free: boolean;
}

/** mm. Spacing of the first guess. */
const GUESS_STEP_MM = 6;
/** mm. A hose pressed into something deeper than this has no room there. */
const PRESSED_MM = 0.2;

/** Lays every stretch between the anchors, each from the shape it had; one whose inputs are as they were is kept. */
export function stretchesOf(
  taken: TakenLay,
  anchors: readonly Anchor[],
  locks: readonly Lock[],
  setting: RunSetting,
  ends: StandingEnds,
  contact: ContactField,
  memory: SpanMemory,
  watch: Watch,
): LaidStretches {
  const sides = sidesOf(anchors);
  const lengths = sideLengths(sides, setting.minRadiusMm, setting.slack, setting.cutLengthMm !== undefined);
  const grown = lengths.reduce((sum, mm, i) => sum + mm - (sides[i] as Side).takenMm, 0);
  const stretches: Stretch[] = [];
  let begin = 0;
  for (let i = 1; i < anchors.length; i++) {
    if ((anchors[i] as Anchor).kind === 'pull') continue;
    const part = { anchors: anchors.slice(begin, i + 1), lengths: lengths.slice(begin, i) };
    begin = i;
    const [from, to] = [part.anchors[0] as Anchor, part.anchors[part.anchors.length - 1] as Anchor];
    const lock = from.kind === 'lock-start' ? locks.find((l) => from.id === `${l.id}/lock-start`) : undefined;
    if (lock !== undefined)
      stretches.push({ from, to, curve: lockedStretch(lock).curve, pulls: [], fractions: [], atRest: true });
    else if (part.lengths.reduce((a, b) => a + b, 0) > SAME_POINT_MM)
      stretches.push(layPart(taken, part, setting, ends, contact, memory, watch));
  }
  return { stretches, tooShortMm: setting.cutLengthMm === undefined ? 0 : Math.max(0, grown) };
}

function sidesOf(anchors: readonly Anchor[]): Side[] {
  return anchors.slice(1).map((to, i) => {
    const from = anchors[i] as Anchor;
    return {
      takenMm: to.takenAtMm - from.takenAtMm,
      taken: { from: from.taken, to: to.taken },
      now: { from: from.now, to: to.now },
      turnsA: from.kind !== 'pull',
      turnsB: to.kind !== 'pull',
      holdsCut: from.kind === 'pull' || to.kind === 'pull',
      changes: !(from.kind === 'lock-start' && to.kind === 'lock-end'),
    };
  });
}

interface Part {
  readonly anchors: readonly Anchor[];
  readonly lengths: readonly number[];
}

function layPart(
  taken: TakenLay,
  { anchors, lengths }: Part,
  setting: RunSetting,
  ends: StandingEnds,
  contact: ContactField,
  memory: SpanMemory,
  watch: Watch,
): Stretch {
  const [from, to] = [anchors[0] as Anchor, anchors[anchors.length - 1] as Anchor];
  const pulls = anchors.slice(1, -1);
  const lengthMm = lengths.reduce((sum, mm) => sum + mm, 0);
  let sum = 0;
  const fractions = pulls.map((_, i) => {
    sum += lengths[i] as number;
    return sum / lengthMm;
  });
  const key = `${from.id}>${to.id}`;
  const known = memory.get(key);
  const [a, b] = [rodEndAt(taken, from, setting, ends), rodEndAt(taken, to, setting, ends)];
  const inputs = JSON.stringify([
    a.kind,
    b.kind,
    setting.a.port,
    setting.b.port,
    from.now,
    to.now,
    lengthMm,
    fractions,
    pulls.map((p) => p.now.point),
  ]);
  const span: HandSpan = {
    a,
    b,
    lengthMm,
    pulls: pulls.map((p, i) => ({ fraction: fractions[i] as number, to: p.now.point })),
    guess: guessBetween(taken, from.takenAtMm, to.takenAtMm, GUESS_STEP_MM),
    stiffnessNmm2: setting.stiffnessNmm2,
    weightNPerMm: setting.weightNPerMm,
    minRadiusMm: setting.minRadiusMm,
    contact,
  };
  const laid = known?.inputs === inputs ? known.laid : laySpan(span, known?.laid, watch);
  const stopped = stoppedEnds(a, b, laid, setting);
  if (stopped !== undefined) {
    if (stopped.a !== undefined) ends.a = stopped.a.clockRad;
    if (stopped.b !== undefined) ends.b = stopped.b.clockRad;
    return layPart(taken, { anchors, lengths }, { ...setting, ...stopped }, ends, contact, memory, watch);
  }
  // A shape that did not close is shown, and not gone on from.
  if (isClosed(laid.rod)) memory.set(key, { inputs, laid });
  else memory.delete(key);
  if (a.kind === 'turning') ends.a = laid.rod.clockARad;
  if (b.kind === 'turning') ends.b = laid.rod.clockBRad;
  return { from, to, curve: laid.curve, pulls, fractions, laid, atRest: isAtRest(laid.rod) };
}

/** Ends that turned past the limit of their range, standing at it; undefined where none did. */
function stoppedEnds(
  a: RodEnd,
  b: RodEnd,
  { rod }: LaidSpan,
  setting: RunSetting,
): { a?: EndSetting; b?: EndSetting } | undefined {
  const stop = (end: EndSetting, rodEnd: RodEnd, clockRad: number): EndSetting | undefined => {
    const allowed = nearestClockOf(end, clockRad);
    return rodEnd.kind === 'turning' && allowed !== clockRad ? { ...end, turns: false, clockRad: allowed } : undefined;
  };
  const [atA, atB] = [stop(setting.a, a, rod.clockARad), stop(setting.b, b, rod.clockBRad)];
  if (atA === undefined && atB === undefined) return undefined;
  return { ...(atA === undefined ? {} : { a: atA }), ...(atB === undefined ? {} : { b: atB }) };
}

function rodEndAt(taken: TakenLay, anchor: Anchor, setting: RunSetting, ends: StandingEnds): RodEnd {
  const { a, b } = taken.lay.straightTailMm;
  if (anchor.kind !== 'end') return { kind: 'held', ...anchor.now };
  return anchor.id === 'a'
    ? rodEnd(setting.a, 'a', a, ends.a, ends.free)
    : rodEnd(setting.b, 'b', b, ends.b, ends.free);
}

/** mm. A rod whose ends miss their places by more has no shape. */
const CLOSED_MM = SAME_POINT_MM / 2;

function isClosed(rod: RodShape): boolean {
  return rod.outcome !== 'too-short' && rod.closureMm <= CLOSED_MM;
}

function isAtRest(rod: RodShape): boolean {
  const still = rod.outcome === 'converged' ? rod.stable : rod.residual <= AT_REST_RESIDUAL;
  return still && isClosed(rod) && rod.pressedMm <= PRESSED_MM;
}

/** mm, from where the stretches begin to where they end. */
export function stretchesLengthMm(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, s) => sum + curveLengthMm(s.curve), 0);
}
