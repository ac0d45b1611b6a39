import type { Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { PartTables } from '../../../../shared/document/parts/schema.ts';
import { type ResolvedProject, resolveProject } from '../../../../shared/document/project/resolve.ts';
import type { Project } from '../../../../shared/document/project/schema.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { sampleProject, sampleTables } from '../../../arbitraries/projects.ts';

/** The sample project, changed, with the sample parts, changed, resolved. */
export function resolved(changes: Partial<Project> = {}, tables: Partial<PartTables> = {}): ResolvedProject {
  const result = resolveProject(sampleProject(changes), { ...sampleTables(), ...tables });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** What one check finds in one lay of the project. */
export function findingsOf(check: string, project: ResolvedProject, lay: Lay): Finding[] {
  return runChecks(project, [lay]).filter((f) => f.check === check);
}
