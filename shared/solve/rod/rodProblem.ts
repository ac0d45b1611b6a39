import type { Vec3 } from '../../base/vec3.ts';

/**
 * One end of a rod, in the bay's frame, mm.
 * `held`: the point and the direction are fixed. `turning`: the end turns freely about a line (the port's axis), and
 * `point` and `direction` stand for its clock 0; clock c is that pose turned right-handed by c about the line.
 * `direction` is the rod's unit tangent there, read along A to B: out of the fitting at A, into the fitting at B.
 */
export type RodEnd =
  | { readonly kind: 'held'; readonly point: Vec3; readonly direction: Vec3 }
  | {
      readonly kind: 'turning';
      readonly axisPoint: Vec3;
      /** unit vector */
      readonly axis: Vec3;
      readonly point: Vec3;
      readonly direction: Vec3;
      /** rad, first guess */
      readonly clockRad: number;
    };

/** Room left at a point of the centreline: filled in by a contact field. */
export interface Gap {
  /** mm, from the hose's surface to what it may touch; negative = pressed in */
  gapMm: number;
  /** the unit direction that opens the gap fastest */
  nx: number;
  ny: number;
  nz: number;
}

/** mm. More than a hose in a crease, which is felt all round, is away from any of its sides. */
export const ROOM_TOLD_EXACTLY_MM = 1;

/**
 * What the hose may lie against. `gapAt` answers for a point of the centreline (bay frame, mm). The gap must be a
 * distance less the room asked for, and may change at most twice as fast as the point moves: points known to be far
 * are not asked about again until they could have come near. Above `ROOM_TOLD_EXACTLY_MM` a lower bound will do, and the
 * direction is not read.
 */
export interface ContactField {
  gapAt(x: number, y: number, z: number, out: Gap): void;
}

/** A node drawn to a place by a spring: a hand that holds the hose there and leaves its direction free. */
export interface RodPull {
  /** 1 to edges - 1; at most one pull a node */
  readonly node: number;
  /** mm, bay frame */
  readonly point: Vec3;
  /** above 0; the node stays off the place by its force over this */
  readonly stiffnessNPerMm: number;
  /** N, the most the spring pulls with, however far off the node is; absent = no limit */
  readonly strengthN?: number;
}

/**
 * Ends that do not let the hose turn in them: a hose already made, or tightened, resists being wrung.
 *
 * A line along the hose's surface (its lay line) leaves A in the direction `materialA` and arrives at B in the direction
 * `materialB`: unit vectors of the bay, each square to the rod's direction at its end. An end that has moved took its
 * direction with it: turn it by the end's own rigid motion. At a `turning` end it stands for clock 0 and turns with it.
 * `materialAtEnd` gives B's for a hose tightened at rest, `materialsOfClock` both for a hose made with a known clock.
 *
 * The twist Tw is the angle, right-handed about the rod's direction at B, from A's material direction carried along the
 * rod without twist (from edge to edge by the least rotation) to B's. It is spread evenly over a rod at rest, which is
 * alike in all directions; its energy is GJ Tw^2 / (2 L). Ends alone tell Tw but for whole turns: those are taken so
 * that Tw at the guess comes nearest to `nearRad`, and from there Tw is followed without a jump to the rod at rest. So
 * the guess should be the last known shape and `nearRad` its twist; an end that turns far is taken along in steps of
 * less than half a turn. Tw keeps its sign when A and B change places, and changes it in a mirror.
 *
 * Nothing keeps a rod from passing through itself: strongly wrung, a slack one may let out two whole turns that way.
 */
export interface RodTwist {
  /** GJ, N mm^2, 0 or more; 0 is a hose that turns in its ends freely */
  readonly torsionalStiffnessNmm2: number;
  readonly materialA: Vec3;
  readonly materialB: Vec3;
  /** rad, about what the twist of the guess is; 0 for a hose tightened at rest */
  readonly nearRad: number;
}

/** A hose of fixed length between two ends, to be let go into its natural shape. */
export interface RodProblem {
  /** how many equal straight edges stand for the hose, at least 4; the error falls with its square */
  readonly edges: number;
  /** mm, mouth to mouth along the hose */
  readonly lengthMm: number;
  readonly a: RodEnd;
  readonly b: RodEnd;
  /** EI, N mm^2, above 0 */
  readonly stiffnessNmm2: number;
  /** N per mm of hose, 0 or more */
  readonly weightNPerMm: number;
  /** unit vector of gravity */
  readonly down: Vec3;
  /** left out: the hose turns freely in its ends, and has no twist */
  readonly twist?: RodTwist;
  readonly contact?: ContactField;
  readonly pulls?: readonly RodPull[];
  /** N per mm a node is pressed in, to begin with; it is raised until nothing is pressed in deeper than allowed */
  readonly contactStiffnessNPerMm?: number;
  /** x, y, z of any polyline of two points or more from about A to about B: the shape to start from */
  readonly guess: Float64Array;
  readonly maxIterations?: number;
  /** true: answer the first equilibrium reached, also where it is no minimum (`stable` then says so) */
  readonly acceptSaddle?: boolean;
}

/** Where the hose presses on something: the force of the thing on the hose, along `normal`. */
export interface RodContact {
  readonly node: number;
  readonly forceN: number;
  readonly normal: Vec3;
}

/**
 * A hose at rest, or the best state reached. `too-short`: no hose of this length joins the ends.
 * `stable`: at a converged shape, no small movement that keeps length and ends lowers the energy (a movement that
 * changes nothing, such as turning a symmetric arch about its chord, does not count against it).
 */
export interface RodShape {
  readonly outcome: 'converged' | 'not-converged' | 'too-short' | 'cancelled';
  /** (edges + 1) * 3: x, y, z in mm, end points included */
  readonly nodes: Float64Array;
  readonly startDirection: Vec3;
  readonly endDirection: Vec3;
  readonly clockARad: number;
  readonly clockBRad: number;
  /** bending, twist, weight (0 at point A's height) and contact, N mm */
  readonly energyNmm: number;
  /** bending alone, N mm */
  readonly bendingNmm: number;
  /** twist alone, N mm */
  readonly twistingNmm: number;
  /** Tw as in `RodTwist`, rad; 0 without one */
  readonly twistRad: number;
  /** N mm, GJ Tw / L: the moment about the rod's direction at B with which end B holds the hose; at A it is the opposite */
  readonly torqueNmm: number;
  /** N, the force with which end B holds the hose */
  readonly endForceN: Vec3;
  /** what is left out of balance, against the largest of EI/L^2, the weight and the end force */
  readonly residual: number;
  /** mm, between the last node and where end B is */
  readonly closureMm: number;
  readonly iterations: number;
  readonly stable: boolean;
  readonly contacts: readonly RodContact[];
  /** mm, how deep the deepest node is pressed in; above 0.05 the hose has no room where it lies */
  readonly pressedMm: number;
}
