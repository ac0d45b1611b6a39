import type { Watch } from '../../base/watch.ts';
import type { Finding, Lay } from '../../document/lay/schema.ts';
import { applyMend } from '../../document/mends/applyMend.ts';
import type { MendAnswer } from '../../document/mends/schema.ts';
import type { PartTables } from '../../document/parts/schema.ts';
import { parseProject } from '../../document/project/parseProject.ts';
import { type ResolvedProject, type ResolvedRun, resolveProject } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { serialiseProject } from '../../document/project/serialiseProject.ts';
import type { Tube } from '../bay/tubeField.ts';
import { runChecks } from '../checks/index.ts';
import type { LayCrew } from '../layRuns/layTask.ts';
import { compareFindings } from './compareFindings.ts';
import type { Proposal } from './proposal.ts';

/** What mends are tried on: a project as it is written, its parts, and the lays as they are. */
export interface MendBench {
  /** as it is written, so that a mend changes what is saved */
  readonly written: Project;
  readonly resolved: ResolvedProject;
  readonly tables: PartTables;
  readonly lays: readonly Lay[];
  readonly today?: string;
  /** the hoses of the other runs, and what stands on their ports */
  readonly others: readonly Tube[];
  readonly crew: LayCrew;
  /** All lays with one run laid again near where it lies. */
  layNear(mended: ResolvedProject, run: ResolvedRun, watch: Watch): Promise<Lay[]>;
  /** All lays with one run laid anew. */
  layAnew(mended: ResolvedProject, run: ResolvedRun, watch: Watch): Promise<Lay[]>;
  /** The lays with all that is measured of one run once it lies, as the job that lays them so would have it. */
  measure(
    mended: ResolvedProject,
    how: MendAnswer['how'],
    lays: readonly Lay[],
    run: string,
    watch: Watch,
  ): Promise<Lay[]>;
}

/** What is to be mended, and with what. */
export interface Work {
  readonly bench: MendBench;
  readonly run: ResolvedRun;
  readonly lay: Lay;
  readonly before: readonly Finding[];
  readonly aimedAt: readonly Finding[];
}

/** A proposal as a project of its own. */
export interface Candidate {
  readonly proposal: Proposal;
  readonly mended: ResolvedProject;
  readonly run: ResolvedRun;
}

/** Undefined where the parts do not go together, or where what reads no path already brings too much. */
export function candidateOf({ bench, run, lay, before, aimedAt }: Work, proposal: Proposal): Candidate | undefined {
  const id = run.run.id;
  // As it will be read from its file, so that what is laid here has the hash of what is laid then.
  const parsed = parseProject(serialiseProject(applyMend(bench.written, { run: id, edit: proposal.edit })));
  const resolved = parsed.ok ? resolveProject(parsed.value, bench.tables) : undefined;
  const own = resolved?.ok === true ? resolved.value.runs.find((r) => r.run.id === id) : undefined;
  if (resolved?.ok !== true || own === undefined) return undefined;
  // Without a path only the checks speak that need none.
  const bare: Lay = { ...lay, outcome: 'no-way', centreline: { points: [], arcLengthMm: [] } };
  const stated = runChecks({ ...resolved.value, runs: [own] }, [bare], bench.today).filter((f) => f.check !== 'laid');
  const { worse } = compareFindings(before, stated);
  return isTooDear(worse, aimedAt) ? undefined : { proposal, mended: resolved.value, run: own };
}

/** Whether a change that cures these brings too much: anything that forbids cutting, and anything at all where it cures nothing that does. */
export function isTooDear(worse: readonly Finding[], cured: readonly Finding[]): boolean {
  const stops = (findings: readonly Finding[]): boolean => findings.some((f) => f.severity === 'stop');
  return stops(worse) || (worse.length > 0 && !stops(cured));
}
