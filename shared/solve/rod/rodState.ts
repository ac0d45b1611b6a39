import type { Gap, RodEnd, RodProblem } from './rodProblem.ts';

/**
 * Inside the relaxation everything is without dimension: lengths in units of the rod's length L, forces in EI/L^2,
 * energies in EI/L, with end A's point as origin. A rod is then N edges of 1/N and stiffness 1.
 */
export interface RodScale {
  readonly lengthMm: number;
  readonly originX: number;
  readonly originY: number;
  readonly originZ: number;
  /** N mm per unit of energy */
  readonly energyNmm: number;
  /** N per unit of force */
  readonly forceN: number;
}

/** A shape: unit tangents of the edges (3N), nodes summed from them (3N + 3), clocks, and the ends at those clocks. */
export interface RodState {
  readonly tangents: Float64Array;
  readonly nodes: Float64Array;
  clockA: number;
  clockB: number;
  /** Tw as in `RodTwist`, followed from state to state; 0 without a twist */
  twistRad: number;
  /** point, its 1st and 2nd derivative by the clock, direction, its 1st and 2nd derivative: 18 numbers each */
  readonly poseA: Float64Array;
  readonly poseB: Float64Array;
}

/** All arrays of a relaxation with N edges, made once and used again. */
export interface RodWorkspace {
  readonly edges: number;
  busy: boolean;
  state: RodState;
  trial: RodState;
  /** tangent-plane bases, 6 per edge: first axis, second axis */
  readonly bases: Float64Array;
  /** bend cells 0..N between edge k-1 and k: gradients 4 (earlier, later), Hessians 3 + 3, coupling 4 */
  readonly cellGradient: Float64Array;
  readonly cellHessian: Float64Array;
  /** suffix sums of position forces plus the closure multiplier, 3 per node */
  readonly adjoint: Float64Array;
  /** 2 per edge, then clock A, clock B */
  readonly gradient: Float64Array;
  readonly step: Float64Array;
  readonly correction: Float64Array;
  /** per edge 20: feedback on position 6, on the edge before 4, on the columns 10 */
  readonly gains: Float64Array;
  /** per node: 1 where it is pressed in; how deep; the contact energy's derivative (3) and second derivative (9) by its place */
  readonly pressed: Uint8Array;
  readonly pressDepthMm: Float64Array;
  readonly pressGradient: Float64Array;
  readonly pressHessian: Float64Array;
  /** where each node's gap was last asked (mm, 3) and what it was (mm) */
  readonly askedAt: Float64Array;
  readonly askedGap: Float64Array;
  /** per node: how many planes stand for the field there (0 = the field itself), and 3 of normal 3 + distance (mm) */
  readonly creased: Uint8Array;
  readonly creasePlanes: Float64Array;
  /** what the twist is ahead of its frames' angle, all through: 0 or an odd number of whole turns */
  twistLiftRad: number;
  /** the twist's derivatives, in the order of `gradient`; and its column in the sweep: gains, 2 per edge, and cost-to-go */
  readonly twistGradient: Float64Array;
  readonly twistGains: Float64Array;
  readonly twistQx: Float64Array;
  readonly twistQa: Float64Array;
  readonly twistS: Float64Array;
  readonly gap: Gap;
  readonly probe: Gap;
  readonly multiplier: Float64Array;
  readonly multiplierStep: Float64Array;
  readonly correctedMultiplier: Float64Array;
  readonly trialClosure: Float64Array;
  readonly closure: Float64Array;
  /** the sweep's matrices */
  readonly pxx: Float64Array;
  readonly pxa: Float64Array;
  readonly paa: Float64Array;
  readonly qx: Float64Array;
  readonly qa: Float64Array;
  readonly s: Float64Array;
  readonly border: Float64Array;
  readonly borderRight: Float64Array;
  readonly eigenvalues: Float64Array;
  readonly eigenvectors: Float64Array;
  readonly borderGiven: Float64Array;
  /** how many of them the last sweep had */
  unknowns: number;
}

function newState(edges: number): RodState {
  return {
    tangents: new Float64Array(3 * edges),
    nodes: new Float64Array(3 * edges + 3),
    clockA: 0,
    clockB: 0,
    twistRad: 0,
    poseA: new Float64Array(18),
    poseB: new Float64Array(18),
  };
}

function newWorkspace(edges: number): RodWorkspace {
  return {
    edges,
    busy: false,
    state: newState(edges),
    trial: newState(edges),
    bases: new Float64Array(6 * edges),
    cellGradient: new Float64Array(4 * edges + 4),
    cellHessian: new Float64Array(10 * edges + 10),
    adjoint: new Float64Array(3 * edges + 3),
    gradient: new Float64Array(2 * edges + 2),
    step: new Float64Array(2 * edges + 2),
    correction: new Float64Array(2 * edges + 2),
    gains: new Float64Array(20 * edges),
    pressed: new Uint8Array(edges + 1),
    pressDepthMm: new Float64Array(edges + 1),
    pressGradient: new Float64Array(3 * edges + 3),
    pressHessian: new Float64Array(9 * edges + 9),
    askedAt: new Float64Array(3 * edges + 3),
    askedGap: new Float64Array(edges + 1),
    creased: new Uint8Array(edges + 1),
    creasePlanes: new Float64Array(12 * edges + 12),
    twistLiftRad: 0,
    twistGradient: new Float64Array(2 * edges + 2),
    twistGains: new Float64Array(2 * edges),
    twistQx: new Float64Array(3),
    twistQa: new Float64Array(2),
    twistS: new Float64Array(6),
    gap: { gapMm: 0, nx: 0, ny: 0, nz: 0 },
    probe: { gapMm: 0, nx: 0, ny: 0, nz: 0 },
    multiplier: new Float64Array(3),
    multiplierStep: new Float64Array(3),
    correctedMultiplier: new Float64Array(3),
    trialClosure: new Float64Array(3),
    closure: new Float64Array(3),
    pxx: new Float64Array(9),
    pxa: new Float64Array(6),
    paa: new Float64Array(4),
    qx: new Float64Array(15),
    qa: new Float64Array(10),
    s: new Float64Array(25),
    border: new Float64Array(36),
    borderRight: new Float64Array(6),
    eigenvalues: new Float64Array(6),
    eigenvectors: new Float64Array(36),
    borderGiven: new Float64Array(6),
    unknowns: 5,
  };
}

/** How many workspaces are kept for later; the oldest goes first. */
const KEPT_WORKSPACES = 8;
const kept = new Map<number, RodWorkspace>();

/** A workspace for N edges that nobody else is using. Nothing in it survives from one relaxation to the next. */
export function takeWorkspace(edges: number): RodWorkspace {
  const known = kept.get(edges);
  if (known && !known.busy) {
    known.busy = true;
    return known;
  }
  const made = newWorkspace(edges);
  made.busy = true;
  if (!known) {
    if (kept.size >= KEPT_WORKSPACES) kept.delete(kept.keys().next().value as number);
    kept.set(edges, made);
  }
  return made;
}

/** The units of a problem. */
export function rodScale(problem: RodProblem): RodScale {
  const { lengthMm, stiffnessNmm2, a } = problem;
  return {
    lengthMm,
    originX: a.point[0],
    originY: a.point[1],
    originZ: a.point[2],
    energyNmm: stiffnessNmm2 / lengthMm,
    forceN: stiffnessNmm2 / (lengthMm * lengthMm),
  };
}

/** Writes an end's point and direction at a clock (rad), and their first two derivatives, into 18 numbers. */
export function poseAt(end: RodEnd, clock: number, scale: RodScale, out: Float64Array): void {
  out.fill(0);
  const inv = 1 / scale.lengthMm;
  if (end.kind === 'held') {
    out[0] = (end.point[0] - scale.originX) * inv;
    out[1] = (end.point[1] - scale.originY) * inv;
    out[2] = (end.point[2] - scale.originZ) * inv;
    for (let i = 0; i < 3; i++) out[9 + i] = end.direction[i] as number;
    return;
  }
  const { axis, axisPoint, point, direction } = end;
  const arm = [(point[0] - axisPoint[0]) * inv, (point[1] - axisPoint[1]) * inv, (point[2] - axisPoint[2]) * inv];
  turned(axis, arm, clock, out, 0);
  turned(axis, direction, clock, out, 9);
  out[0] = (out[0] as number) + (axisPoint[0] - scale.originX) * inv;
  out[1] = (out[1] as number) + (axisPoint[1] - scale.originY) * inv;
  out[2] = (out[2] as number) + (axisPoint[2] - scale.originZ) * inv;
}

/** v turned about the axis by the clock, with first and second derivative, at out[at .. at + 8]. */
function turned(axis: readonly number[], v: readonly number[], clock: number, out: Float64Array, at: number): void {
  const [ax, ay, az] = axis as [number, number, number];
  const [x, y, z] = v as [number, number, number];
  const along = ax * x + ay * y + az * z;
  const side = [ay * z - az * y, az * x - ax * z, ax * y - ay * x];
  const c = Math.cos(clock);
  const s = Math.sin(clock);
  for (let i = 0; i < 3; i++) {
    const parallel = along * (axis[i] as number);
    const square = (v[i] as number) - parallel;
    out[at + i] = parallel + c * square + s * (side[i] as number);
    out[at + 3 + i] = c * (side[i] as number) - s * square;
    out[at + 6 + i] = -c * square - s * (side[i] as number);
  }
}
