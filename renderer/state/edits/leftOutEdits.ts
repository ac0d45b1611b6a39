import type { Project } from '../../../shared/document/project/schema.ts';

/** Leaves a part of the scan out, by its name or a pattern: it is not there when the hoses are. */
export function leaveOut(project: Project, pattern: string): Project {
  const before = project.bay.leftOut ?? [];
  const name = pattern.trim();
  if (name === '' || before.includes(name)) return project;
  return { ...project, bay: { ...project.bay, leftOut: [...before, name] } };
}

/** Brings back what was left out by a name or pattern. */
export function bringBack(project: Project, pattern: string): Project {
  const { leftOut = [], ...bay } = project.bay;
  const kept = leftOut.filter((name) => name !== pattern);
  if (kept.length === leftOut.length) return project;
  return { ...project, bay: kept.length === 0 ? bay : { ...bay, leftOut: kept } };
}
