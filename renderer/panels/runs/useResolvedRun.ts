import { useMemo } from 'react';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import { type ResolvedRun, resolveProject } from '../../../shared/document/project/resolve.ts';
import type { Project } from '../../../shared/document/project/schema.ts';

/** A run with its parts looked up; undefined where the project names what is not there. */
export function useResolvedRun(project: Project, tables: PartTables, runId: string): ResolvedRun | undefined {
  return useMemo(() => {
    const resolved = resolveProject(project, tables);
    return resolved.ok ? resolved.value.runs.find(({ run }) => run.id === runId) : undefined;
  }, [project, tables, runId]);
}
