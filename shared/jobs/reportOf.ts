import { describeProblem, type Problem } from '../base/result.ts';
import { SOLVER_VERSION } from '../base/version.ts';
import { type Lay, type LayReport, REPORT_FORMAT, REPORT_VERSION } from '../document/lay/schema.ts';
import type { ResolvedProject } from '../document/project/resolve.ts';
import { runChecks } from '../solve/checks/index.ts';
import { flowOf } from '../solve/flow/flowOf.ts';
import type { ReadProject } from './readProject.ts';

/** The report of lays of a project, with every check's findings. */
export function reportOf(read: ReadProject, lays: readonly Lay[], warnings: readonly Problem[]): LayReport {
  const { project } = read.resolved;
  return {
    format: REPORT_FORMAT,
    version: REPORT_VERSION,
    solverVersion: SOLVER_VERSION,
    seed: project.seed,
    project: { name: project.name, exampleData: project.exampleData, inputHash: read.inputHash },
    warnings: warnings.map(describeProblem),
    lays: lays.map((lay) => withFlow(read.resolved, lay)),
    findings: runChecks(read.resolved, lays, read.today),
  };
}

/** A lay with what the wanted flow does in it, as the project asks now. */
export function withFlow(resolved: ResolvedProject, { flow: _earlier, ...lay }: Lay): Lay {
  const run = resolved.runs.find((r) => r.run.id === lay.run);
  const flow = run === undefined || lay.centreline.points.length < 2 ? undefined : flowOf(run, lay);
  return flow === undefined ? lay : { ...lay, flow };
}
