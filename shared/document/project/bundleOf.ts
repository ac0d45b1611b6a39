import type { Bundle, Project } from './schema.ts';

/** The bundle in which two different runs lie side by side, tied together; undefined where the project puts them in none. */
export function bundleOf(project: Pick<Project, 'bundles'>, runId: string, otherRunId: string): Bundle | undefined {
  if (runId === otherRunId) return undefined;
  return project.bundles?.find((b) => b.runs.includes(runId) && b.runs.includes(otherRunId));
}
