import { addScaled, DOWN, length, lengthOf, scale, sub, type Vec3 } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { type CubicCurve, curveAt, curveLengthMm, splineThrough } from '../../geometry/cubicCurve.ts';
import { type ContactField, type RodEnd, type RodShape, relaxRod } from '../rod/index.ts';

/** A place of a span that the hand holds, its direction free. */
export interface SpanPull {
  /** of the span's length, from its A end; above 0 and below 1 */
  readonly fraction: number;
  readonly to: Vec3;
}

/** A stretch of hose between two holds, to be let go from a shape near the one it will take. */
export interface HandSpan {
  readonly a: RodEnd;
  readonly b: RodEnd;
  readonly lengthMm: number;
  readonly pulls: readonly SpanPull[];
  readonly guess: Float64Array;
  readonly stiffnessNmm2: number;
  readonly weightNPerMm: number;
  /** the hose's limit at the centreline: what the fineness of the rod and the strength of the hand are measured by */
  readonly minRadiusMm: number;
  readonly contact: ContactField;
}

export interface LaidSpan {
  readonly rod: RodShape;
  readonly curve: CubicCurve;
  /** in the order of the pulls */
  readonly holds: readonly { readonly node: number; readonly forceN: Vec3; readonly offMm: number }[];
}

/** Edge length over the least radius: the curvature at a held end comes out too large by about half its square. */
const EDGE_OVER_RADIUS = 0.07;
const LEAST_EDGES = 32;
const MOST_EDGES = 160;
/** How many more edges than needed are tried, to find a number at which a node stands where the hand holds. */
const MORE_EDGES = 16;
/** Steps of the rod at most, in one go: from a shape near by it takes three to six. */
const MOST_STEPS = 60;
/** The hand's spring, in EI / L^3: some thousand times as stiff as the hose is across its middle. */
const HAND_STIFFNESS = 1e6;
/** The hand's strength, in EI / R^2: bending a hose to its limit takes about one; a few hundred newtons for a shop's hose. */
const HAND_STRENGTH = 20;

/**
 * Lets a span of hose go from a near shape: an inextensible rod as when a run is laid, only coarser, and the hand a stiff
 * spring at the node nearest to where it holds. Where that takes more than a hand has, it is let go again with no more than
 * that. The length of the spline is the wanted one as far as the last shape's chords tell, within 0.01 mm.
 */
export function laySpan(span: HandSpan, before: LaidSpan | undefined, watch: Watch): LaidSpan {
  if (before === undefined) {
    const first = relaxSpan(span, undefined, span.guess, Number.POSITIVE_INFINITY, watch);
    return laySpan(span, first, watch);
  }
  const strengthN = (HAND_STRENGTH * span.stiffnessNmm2) / span.minRadiusMm ** 2;
  const pullsItsMost = ({ forceN }: { forceN: Vec3 }): boolean => length(forceN) > strengthN * PULLS_ITS_MOST;
  // A spring without end goes straight there; one that gives way takes longer, so it is only used where it must be.
  if (before.holds.some(pullsItsMost)) return relaxSpan(span, before, before.rod.nodes, strengthN, watch);
  const fresh = relaxSpan(span, before, before.rod.nodes, Number.POSITIVE_INFINITY, watch);
  return fresh.holds.some(pullsItsMost) ? relaxSpan(span, before, fresh.rod.nodes, strengthN, watch) : fresh;
}

/** A hand that pulls with more than this part of its strength is taken to pull its most. */
const PULLS_ITS_MOST = 0.999;

function relaxSpan(
  span: HandSpan,
  before: LaidSpan | undefined,
  guess: Float64Array,
  strengthN: number,
  watch: Watch,
): LaidSpan {
  const { edges, nodes } = edgesFor(span, before);
  const stiffnessNPerMm = (HAND_STIFFNESS * span.stiffnessNmm2) / span.lengthMm ** 3;
  const pulls = span.pulls.map(({ fraction, to }, i) => {
    const node = nodes[i] as number;
    // The node stands a little along the hose from where the hand holds: its place is as far along from the hand's.
    const along = (node / edges - fraction) * span.lengthMm;
    const point = before === undefined ? to : addScaled(to, directionAt(before, fraction), along);
    return { node, point, stiffnessNPerMm, strengthN };
  });
  const rod = relaxRod(
    {
      edges,
      lengthMm: span.lengthMm * (before === undefined ? 1 : chordShare(before)),
      a: span.a,
      b: span.b,
      stiffnessNmm2: span.stiffnessNmm2,
      weightNPerMm: span.weightNPerMm,
      down: DOWN,
      contact: span.contact,
      pulls,
      guess,
      maxIterations: MOST_STEPS,
    },
    watch,
  );
  const holds = pulls.map(({ node, point }) => {
    const missing = sub(point, nodeAt(rod, node));
    const offMm = length(missing);
    const forceN = Math.min(offMm * stiffnessNPerMm, strengthN);
    return { node, forceN: scale(missing, offMm > 0 ? forceN / offMm : 0), offMm };
  });
  return { rod, curve: splineThrough(rod.nodes, span.lengthMm / edges, rod.startDirection, rod.endDirection), holds };
}

/**
 * How many edges, and which nodes the hand holds. As many as before while they are fine enough, so that the shape before
 * stands; else, of a few numbers of edges, the one whose nodes come nearest to the hand.
 */
function edgesFor(
  { lengthMm, minRadiusMm, pulls }: HandSpan,
  before: LaidSpan | undefined,
): { edges: number; nodes: number[] } {
  const wanted = Math.round(lengthMm / (EDGE_OVER_RADIUS * minRadiusMm));
  const least = Math.min(MOST_EDGES, Math.max(LEAST_EDGES, wanted));
  const nodeOf = (edges: number, { fraction }: SpanPull): number =>
    Math.min(edges - 1, Math.max(1, Math.round(fraction * edges)));
  const kept = before === undefined ? 0 : before.rod.nodes.length / 3 - 1;
  let best = least;
  if (before !== undefined && before.holds.length === pulls.length && kept > least * 0.8 && kept < least * 1.4)
    best = kept;
  else {
    let bestOff = Number.POSITIVE_INFINITY;
    for (let edges = least; edges <= least + (pulls.length > 0 ? MORE_EDGES : 0); edges++) {
      const off = Math.max(0, ...pulls.map((p) => Math.abs(nodeOf(edges, p) / edges - p.fraction)));
      if (off >= bestOff) continue;
      best = edges;
      bestOff = off;
    }
  }
  return { edges: best, nodes: pulls.map((p) => nodeOf(best, p)) };
}

/** Length of the rod, which is its chords, over that of the spline through its nodes. */
function chordShare({ rod, curve }: LaidSpan): number {
  const { nodes } = rod;
  const edgeMm = lengthOf(nodes[3]! - nodes[0]!, nodes[4]! - nodes[1]!, nodes[5]! - nodes[2]!);
  return ((nodes.length / 3 - 1) * edgeMm) / curveLengthMm(curve);
}

function directionAt({ curve }: LaidSpan, fraction: number): Vec3 {
  return curveAt(curve, fraction * curveLengthMm(curve)).tangent;
}

function nodeAt({ nodes }: RodShape, node: number): Vec3 {
  return [nodes[3 * node]!, nodes[3 * node + 1]!, nodes[3 * node + 2]!];
}
