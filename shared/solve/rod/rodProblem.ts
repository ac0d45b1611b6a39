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

/**
 * What the hose may lie against. `gapAt` answers for a point of the centreline (bay frame, mm). The gap must be a
 * distance less the room asked for, and may change at most twice as fast as the point moves: points known to be far
 * are not asked about again until they could have come near. Where the gap is above 0 the direction is not read.
 */
export interface ContactField {
  gapAt(x: number, y: number, z: number, out: Gap): void;
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
  readonly contact?: ContactField;
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
  /** bending, weight (0 at point A's height) and contact, N mm */
  readonly energyNmm: number;
  /** bending alone, N mm */
  readonly bendingNmm: number;
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
