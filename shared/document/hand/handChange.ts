import type { Vec3 } from '../../base/vec3.ts';
import type { Clearance, Lay } from '../lay/schema.ts';
import type { Lock, Port, Support } from '../project/schema.ts';

/**
 * One laid run as the hand has it at this moment, against the lay it was taken from. Everything stands for itself and
 * not for a step, so that moves may be left out; only a hose that snapped over something on the way stays so until it is
 * let go (an empty change). What is absent is as it was taken.
 */
export interface HandChange {
  /** a place of the hose held by the hand: arc length from shoulder A on the lay as it was taken; the hose's direction is free */
  readonly pull?: { readonly arcLengthMm: number; readonly to: Vec3 };
  /** every support of the run as they are now, END A to END B; known by their ids */
  readonly supports?: readonly Support[];
  /** ports of the run that moved or turned, by their ids */
  readonly ports?: readonly Port[];
  /** every locked stretch of the run as they are now */
  readonly locks?: readonly Lock[];
}

/** Where the hand holds the hose. */
export interface HandHold {
  /** from shoulder A, on the hose as it lies now */
  readonly arcLengthMm: number;
  /** where the hose is there: `to` unless something is in the way or the hose is too short */
  readonly point: Vec3;
  /** unit, from END A to END B: what a clamp put here would have as its axis */
  readonly axis: Vec3;
  /** mm, between `point` and where the hand wants it */
  readonly offMm: number;
  /** N, with which the hand holds the hose there */
  readonly forceN: number;
}

/**
 * A run in the hand, measured: the fields of a `Lay` that a hand can change, so that `{ ...lay, ...shape }` draws it.
 * `tightest` stands for the lay's clearances: of all things, the one that is furthest under, or least over, what is
 * asked of it. What a lay tells beyond that (profile, breathing, end room, slack against the taut lay) is known when the
 * run is laid again.
 */
export interface HandShape
  extends Pick<
    Lay,
    | 'run'
    | 'outcome'
    | 'reason'
    | 'centreline'
    | 'outsideDiameterMm'
    | 'ends'
    | 'supports'
    | 'cutLengthMm'
    | 'liveLengthMm'
    | 'overallLengthMm'
    | 'clock'
    | 'minRadius'
    | 'straightTailMm'
  > {
  readonly tightest?: Clearance;
  readonly hold?: HandHold;
}
