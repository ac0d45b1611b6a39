import type { Problem } from '../base/result.ts';
import type { LengthUnit } from '../base/units.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Progress } from '../base/watch.ts';
import type { EndTrial } from '../document/endTrial/schema.ts';
import type { HandChange, HandShape } from '../document/hand/handChange.ts';
import type { LayReport } from '../document/lay/schema.ts';
import type { Mends } from '../document/mends/schema.ts';
import type { PaperName } from '../document/paper/paperNames.ts';
import type { NamedFile, ProjectFiles } from '../document/project/projectFiles.ts';
import type { Paperwork } from '../document/project/schema.ts';
import type { Straightened } from '../document/straightened/schema.ts';
import type { WaysRound } from '../document/waysRound/schema.ts';
import type { Sweep } from '../geometry/sweep/sweep.ts';
import type { TriMesh } from '../geometry/triMesh.ts';

/**
 * Long work by name: what goes in, what comes out. Inputs and outputs are plain records and typed arrays, so that a job
 * runs the same in a browser worker, in a Node worker thread and inline. `runJob` is the only caller of `solve`.
 */
export type { HandChange, HandShape, NamedFile, ProjectFiles };

/** A bay ready to be drawn. Positions in mm, bay frame; parts as ranges of triangles, each with the id of its skin. */
export interface BayPicture {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
  readonly parts: readonly { name: string; firstTriangle: number; triangleCount: number; skin: string; body: string }[];
}

/** What is seen of mesh files before anything is said about them: lengths in the numbers of the files. */
export interface MeshLook {
  readonly meshes: readonly { readonly path: string; readonly sha256: string }[];
  readonly triangles: number;
  readonly parts: readonly string[];
  /** corners of triangles strewn over the meshes, x y z each: enough to draw an outline */
  readonly sample: Float32Array;
  readonly box: { readonly min: Vec3; readonly max: Vec3 };
  /** what the numbers are probably in; to be asked about */
  readonly unit: LengthUnit;
}

export interface JobTable {
  /** Looks at mesh files that are to become a bay. */
  readonly lookAtMeshes: {
    input: { readonly files: readonly NamedFile[] };
    output: MeshLook & { warnings: readonly Problem[] };
  };
  /** Read, validate and hash a project and its meshes; the bay as a picture. */
  readonly openProject: { input: ProjectFiles; output: { bay: BayPicture; warnings: readonly Problem[] } };
  /** What the parts of a mesh sweep as they move, as triangles of its own: x, y, z of each corner. mm, bay frame. */
  readonly sweepParts: { input: { readonly mesh: TriMesh; readonly sweep: Sweep }; output: { corners: Float32Array } };
  /** Lay all runs, or the named ones (others are kept as laid in `earlier`), and check them. */
  readonly layRuns: {
    input: ProjectFiles & { runs?: readonly string[]; earlier?: LayReport };
    output: LayReport;
  };
  /** Lay one run with every pair of ends that fits; the other runs stay as `earlier` has them. */
  readonly endTrial: { input: ProjectFiles & { run: string; earlier?: LayReport }; output: EndTrial };
  /** Lay one run on different sides of things; the other runs stay as `earlier` has them. */
  readonly waysRound: { input: ProjectFiles & { run: string; earlier?: LayReport }; output: WaysRound };
  /**
   * What would mend the findings of one run that forbid cutting it or are to be looked at, of these checks where they are
   * named: each change tried by laying the run so, among the others as the report has them.
   */
  readonly tryMends: {
    input: ProjectFiles & { run: string; report: LayReport; checks?: readonly string[] };
    output: Mends;
  };
  /**
   * Take one laid run in the hand: what `moveRun` needs is made ready and kept by the worker under the name `hand`. Only
   * the last few hands are kept. A run without a hose to show (`no-way`) cannot be taken.
   */
  readonly takeRun: {
    input: ProjectFiles & { run: string; report: LayReport };
    output: { hand: string; shape: HandShape };
  };
  /** The shape of the hose in the hand after a change. A hand the worker does not know is a problem at `hand`: take the run again. */
  readonly moveRun: { input: { hand: string; change: HandChange }; output: HandShape };
  /**
   * Lay one run again near where it lies: the project as it is now, the way round things as `along` (such as the
   * centreline of the shape in the hand) or the earlier report has it, without a search for other ways. The other lays
   * stay as `earlier` has them. `layRuns` lays it anew from nothing.
   */
  readonly relayRun: {
    input: ProjectFiles & { run: string; earlier: LayReport; along?: readonly Vec3[] };
    output: LayReport;
  };
  /** One laid run as the project says the bench measured its hose; the other lays stay. Then everything is checked. */
  readonly builtHose: { input: ProjectFiles & { run: string; report: LayReport }; output: LayReport };
  /** What a bent rod, digitised on the job, says of the hose to be made. Points and outlets in one frame, mm. */
  readonly straightenRod: { input: BentRodInput; output: Straightened };
  /** Check the lays of a report against the project as it stands now. */
  readonly checkLays: { input: ProjectFiles & { report: LayReport }; output: LayReport };
  /** Draw the papers from a report; nothing is computed here that is not in it. */
  readonly makeSheets: {
    input: ProjectFiles & {
      report: LayReport;
      runs?: readonly string[];
      /** default all */
      papers?: readonly PaperName[];
      fonts: PaperFonts;
      printedOn: string;
    };
    output: { files: readonly NamedFile[] };
  };
}

/** A bent rod as it was digitised, from END A to END B. */
export interface BentRodInput {
  readonly points: readonly Vec3[];
  /** the way the outlet points, from bend to seat; absent = a straight end */
  readonly outletA?: Vec3;
  readonly outletB?: Vec3;
  /** C of each end where the rod reaches from seat to seat; absent = from shoulder to shoulder */
  readonly cutOffMm?: { readonly a: number; readonly b: number };
  /** which published tolerance the clock has; absent = the usual one */
  readonly clockTolerance?: Paperwork['clockTolerance'];
}

/** TrueType files that the host hands over, since `shared/` reads no disk. */
export interface PaperFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type JobName = keyof JobTable;
export type JobInput<N extends JobName> = JobTable[N]['input'];
export type JobOutput<N extends JobName> = JobTable[N]['output'];

/** How a job ended. Bad input and cancelling are values; a failure is our own mistake, in words for a report. */
export type JobEnd<N extends JobName> =
  | { readonly kind: 'done'; readonly output: JobOutput<N> }
  | { readonly kind: 'bad-input'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string };

/** Host to worker. `cancelFlag`, where the host has shared memory, is one Int32: 1 = stop. */
export type ToWorker = {
  [N in JobName]: { id: number; name: N; input: JobInput<N>; cancelFlag?: SharedArrayBuffer };
}[JobName];

/** Worker to host. After `failed` the worker's state is unknown: the host throws it away and starts another. */
export type FromWorker =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'end'; readonly end: JobEnd<JobName> };
