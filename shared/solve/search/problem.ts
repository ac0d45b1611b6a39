import type { TurnRange } from '../../base/turnRange.ts';
import type { Vec3 } from '../../base/vec3.ts';
import type { ArcLinePath, Pose } from '../../geometry/arcLinePath.ts';
import type { Box } from '../../geometry/box.ts';
import type { Fall } from './fall.ts';
import type { NoCrest } from './noCrest.ts';

/** Where the hose's centreline may run, for one run: everything the search may ask of the bay. */
export interface ClearanceField {
  /** the centreline stays inside, mm */
  readonly bounds: Box;
  /** A true lower bound, mm, on the exact margin; cheap (a look into a grid). */
  coarseMarginMm(x: number, y: number, z: number): number;
  /** An upper bound, mm, on the exact margin, as cheap; infinite where none is known. */
  mostMarginMm(x: number, y: number, z: number): number;
  /**
   * Least over all obstacles of (distance - centre distance required there), mm; negative = too near. May answer any
   * value of at least `upToMm` once the margin is known to be at least that.
   */
  marginMm(x: number, y: number, z: number, upToMm: number): number;
  /** mm the margin may change per mm moved, at least 1 */
  readonly lipschitz: number;
  /** the same within so many mm of a place, at most `lipschitz` */
  steepest(x: number, y: number, z: number, withinMm: number): number;
}

export type EndChoice =
  | { readonly kind: 'held'; readonly pose: Pose }
  /** A swivel end: the pose of the mouth (end of the straight tail) at each clock, rad, of a full turn or of a part of it. */
  | {
      readonly kind: 'turning';
      poseAt(clockRad: number): Pose;
      /** whether the end itself, seat to mouth, stands clear at a clock; absent = it always does */
      standsClear?(clockRad: number): boolean;
      /** the clocks it may turn to; absent = all */
      readonly clocks?: TurnRange;
    };

/**
 * `glance` only asks whether there is a way that is not hard to find; `unkicked` is `quick` for ways that only lead, whose
 * last per cent of length nobody measures.
 */
export type Effort = 'glance' | 'unkicked' | 'quick' | 'normal';

export interface SearchProblem {
  readonly from: EndChoice;
  readonly to: EndChoice;
  /** least radius of the centreline, mm, above 0 */
  readonly minRadiusMm: number;
  readonly field: ClearanceField;
  /** how many distinct ways are wanted at most, 1 or more */
  readonly ways: number;
  readonly seed: number;
  readonly effort: Effort;
  /** where the hose has to run downhill all along, from END A to END B or the other way */
  readonly fall?: Fall;
  /** where the hose may have no crest in which air stays */
  readonly noCrest?: NoCrest;
  /** true = do not look for the nearest miss when there is no way: it costs as much as the search itself */
  readonly withoutNearMiss?: boolean;
}

export interface Way {
  readonly path: ArcLinePath;
  readonly lengthMm: number;
  /** clock of each end in [0, 2 pi); 0 at a held end */
  readonly fromClockRad: number;
  readonly toClockRad: number;
  /** proven lower bound on the margin along the whole path; at least -CLEARANCE_PROOF_MM */
  readonly leastMarginMm: number;
}

export interface WorstPlace {
  readonly point: Vec3;
  readonly marginMm: number;
}

export interface SearchResult {
  /**
   * `start-blocked`, `goal-blocked`: no clock of that end leaves its mouth clear. `no-way-found`: proven,
   * nothing joins the ends, however it bends. `exhausted`: nothing was found by all that the effort allows.
   */
  readonly outcome: 'found' | 'start-blocked' | 'goal-blocked' | 'no-way-found' | 'exhausted';
  /** shortest first, each passing some obstacle on another side than the others */
  readonly ways: readonly Way[];
  /** where nothing was found: the way that breaks the clearance least, of those looked at, and where it does worst */
  readonly bestNearMiss?: { readonly path: ArcLinePath; readonly worst: WorstPlace };
  /** states of the lattice and the trees that were expanded: a count of the work done, the same on every host */
  readonly expanded: number;
}
