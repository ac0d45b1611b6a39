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

/** How finely a hose stands as a rod. */
export interface Fineness {
  /** edge length over the hose's least radius */
  readonly edgeOverRadius: number;
  readonly leastEdges: number;
  /** times the rod is shortened so that the spline through it, not the chords, has the wanted length; each gains two digits */
  readonly lengthCorrections: number;
  readonly maxIterations: number;
}

/**
 * For what is measured and shown. The curvature at a held end comes out too large by about half the square of edge over
 * radius (measured on a quarter circle), so this keeps it under RADIUS_RELATIVE.
 */
export const FINE: Fineness = { edgeOverRadius: 0.03, leastEdges: 24, lengthCorrections: 3, maxIterations: 200 };

/** To choose between shapes that are far from each other, in a tenth of the time: off by under 1 % in curvature, 1 mm in place. */
export const ROUGH: Fineness = { edgeOverRadius: 0.12, leastEdges: 12, lengthCorrections: 1, maxIterations: 100 };

const MOST_EDGES = 600;

/**
 * Lets a span relax as an inextensible elastic rod and puts the twice continuous spline through its nodes, whose length
 * is the wanted one to LENGTH_PROOF_MM. setting: what the hose is like. undefined where the rod does not reach its end.
 */
export function relaxSpan(
  setting: Pick<RunSetting, 'minRadiusMm' | 'stiffnessNmm2' | 'weightNPerMm'>,
  span: FreeSpan,
  watch: Watch,
  fineness: Fineness = FINE,
): RelaxedSpan | undefined {
  const { lengthMm, contact, twist } = span;
  const wanted = Math.round(lengthMm / (fineness.edgeOverRadius * setting.minRadiusMm));
  const edges = Math.min(MOST_EDGES, Math.max(fineness.leastEdges, wanted));
  const reach = lengthMm / edges;
  let rodLengthMm = lengthMm;
  let guess = span.guess;
  let best: RelaxedSpan | undefined;
  for (let round = 0; round <= fineness.lengthCorrections; round++) {
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
        maxIterations: fineness.maxIterations,
      },
      watch,
    );
    // A rod that did not close does not reach its end: there is no hose to show.
    if (rod.outcome === 'too-short' || rod.closureMm > CLOSED_MM) return best;
    const curve = splineThrough(rod.nodes, reach, rod.startDirection, rod.endDirection);
    best = { rod, curve, lengthMm };
    // One that presses on something and does not come to rest has no room: its exact length is nothing to look for.
    if (fineness === ROUGH && rod.contacts.length > 0 && !isAtRest(rod)) break;
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

/** An end that turns, at a clock; another as it is. */
export function turnedTo(end: RodEnd, clockRad: number): RodEnd {
  return end.kind === 'turning' ? { ...end, clockRad } : end;
}
