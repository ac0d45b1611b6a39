import { AT_REST_RESIDUAL, ROD_CLOSURE_MM, SAME_POINT_MM } from '../../base/tolerances.ts';
import { DOWN } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type CubicCurve, curveLengthMm, splineThrough } from '../../geometry/cubicCurve.ts';
import { relaxRod } from '../rod/relaxRod.ts';
import type { ContactField, RodEnd, RodShape, RodTwist } from '../rod/rodProblem.ts';
import type { RunSetting } from './runSetting.ts';

/** A stretch of hose between two places that hold it, to be let go. */
export interface FreeSpan {
  readonly a: RodEnd;
  readonly b: RodEnd;
  readonly lengthMm: number;
  /** x, y, z of a line from about A to about B */
  readonly guess: Float64Array;
  readonly contact?: ContactField;
  readonly twist?: RodTwist;
}

export interface RelaxedSpan {
  readonly rod: RodShape;
  readonly curve: CubicCurve;
  /** as wanted, mm */
  readonly lengthMm: number;
}

/**
 * Edge length of the relaxed rod over the hose's least radius. The curvature at a held end comes out too large by about
 * half the square of edge over radius (measured on a quarter circle), so this keeps it under RADIUS_RELATIVE.
 */
const EDGE_OVER_RADIUS = 0.03;
const LEAST_EDGES = 24;
const MOST_EDGES = 600;
/** Times the rod is shortened so that the spline through it, not the chords, has the wanted length. Each gains two digits. */
const LENGTH_CORRECTIONS = 3;

/**
 * Lets a span relax as an inextensible elastic rod and puts the twice continuous spline through its nodes, whose length
 * is the wanted one to LENGTH_PROOF_MM. setting: what the hose is like. undefined where the rod does not reach its end.
 */
export function relaxSpan(
  setting: Pick<RunSetting, 'minRadiusMm' | 'stiffnessNmm2' | 'weightNPerMm'>,
  span: FreeSpan,
  watch: Watch,
): RelaxedSpan | undefined {
  const { lengthMm, contact, twist } = span;
  const edges = Math.min(
    MOST_EDGES,
    Math.max(LEAST_EDGES, Math.round(lengthMm / (EDGE_OVER_RADIUS * setting.minRadiusMm))),
  );
  const reach = lengthMm / edges;
  let rodLengthMm = lengthMm;
  let guess = span.guess;
  let best: RelaxedSpan | undefined;
  for (let round = 0; round <= LENGTH_CORRECTIONS; round++) {
    const rod = relaxRod(
      {
        edges,
        lengthMm: rodLengthMm,
        a: best === undefined ? span.a : turnedTo(span.a, best.rod.clockARad),
        b: best === undefined ? span.b : turnedTo(span.b, best.rod.clockBRad),
        stiffnessNmm2: setting.stiffnessNmm2,
        weightNPerMm: setting.weightNPerMm,
        down: DOWN,
        ...(contact === undefined ? {} : { contact }),
        ...(twist === undefined ? {} : { twist: { ...twist, nearRad: best?.rod.twistRad ?? twist.nearRad } }),
        guess,
      },
      watch,
    );
    // A rod that did not close does not reach its end: there is no hose to show.
    if (rod.outcome === 'too-short' || rod.closureMm > CLOSED_MM) return best;
    const curve = splineThrough(rod.nodes, reach, rod.startDirection, rod.endDirection);
    best = { rod, curve, lengthMm };
    const off = lengthMm - curveLengthMm(curve);
    if (Math.abs(off) < LENGTH_PROOF_MM) break;
    rodLengthMm += off;
    guess = rod.nodes;
  }
  return best;
}

/** Whether a relaxed rod lies still and is pressed into nothing. */
export function isAtRest(rod: RodShape): boolean {
  const still = rod.outcome === 'converged' ? rod.stable : rod.residual <= AT_REST_RESIDUAL;
  return still && rod.pressedMm <= PRESSED_MM;
}

/** mm. A hose pressed into something deeper than this has no room there: the whole of the contact's own softness is less. */
const PRESSED_MM = 0.2;

/** mm. A rod whose ends miss their places by more than this has no shape; well under SAME_POINT_MM, so that spans join. */
const CLOSED_MM = SAME_POINT_MM / 2;

/** mm. How near the spline's length comes to the wanted length: far under what a saw can cut. */
const LENGTH_PROOF_MM = 100 * ROD_CLOSURE_MM;

function turnedTo(end: RodEnd, clockRad: number): RodEnd {
  return end.kind === 'turning' ? { ...end, clockRad } : end;
}
