import type { Project, Run } from '../../../shared/document/project/schema.ts';

/** The project with one run changed; the very same project when nothing is. */
export function withRun(project: Project, runId: string, change: (run: Run) => Run): Project {
  const runs = project.runs.map((run) => (run.id === runId ? change(run) : run));
  const changed = runs.some((run, i) => JSON.stringify(run) !== JSON.stringify(project.runs[i]));
  return changed ? { ...project, runs } : project;
}
