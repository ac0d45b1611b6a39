import type { Project } from '../../../shared/document/project/schema.ts';

/** What the project is called, on every paper too. */
export function setProjectName(project: Project, name: string): Project {
  return name.trim() === '' || name.trim() === project.name ? project : { ...project, name: name.trim() };
}

/** A note on the whole; '' = none. */
export function setProjectNote(project: Project, text: string): Project {
  const { note = '', ...bare } = project;
  if (text.trim() === note) return project;
  return text.trim() === '' ? bare : { ...bare, note: text.trim() };
}
