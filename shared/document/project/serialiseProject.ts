import { invariant } from '../../base/invariant.ts';
import { Project } from './schema.ts';

/**
 * A project as the text of its file: JSON, two spaces, keys in the schema's order whatever order they were set in, a
 * line end at the end. `parseProject` reads back an equal project. A project that breaks the schema is our own mistake.
 */
export function serialiseProject(project: Project): string {
  const checked = Project.safeParse(project);
  invariant(checked.success, `serialiseProject: not a project: ${checked.error?.message ?? ''}`);
  return `${JSON.stringify(checked.data, null, 2)}\n`;
}
