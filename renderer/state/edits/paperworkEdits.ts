import type { Paperwork, Project } from '../../../shared/document/project/schema.ts';

/** How the papers speak; a value that is undefined goes back to the usual one. */
export function setPaperwork(
  project: Project,
  change: { readonly [K in keyof Paperwork]?: Paperwork[K] | undefined },
): Project {
  const { paperwork, ...rest } = project;
  const told = Object.entries({ ...paperwork, ...change }).filter(([, value]) => value !== undefined);
  return told.length === 0 ? rest : { ...rest, paperwork: Object.fromEntries(told) as Paperwork };
}
