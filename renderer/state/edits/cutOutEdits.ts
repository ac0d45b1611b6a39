import type { Vec3 } from '../../../shared/base/vec3.ts';
import { cutOutBox } from '../../../shared/document/project/cutOutBox.ts';
import type { Project } from '../../../shared/document/project/schema.ts';

/** Makes a part of its own of what lies in a box of the bay, mm; `of` = of that part alone. */
export function cutOut(
  project: Project,
  { name, of, low, high }: { readonly name: string; readonly of?: string; readonly low: Vec3; readonly high: Vec3 },
): Project {
  const { bay } = project;
  const piece = {
    name: name.trim(),
    ...(of === undefined ? {} : { of }),
    ...cutOutBox({ ...(bay.scale && { scale: bay.scale }), ...(bay.level && { level: bay.level }) }, low, high),
  };
  return { ...project, bay: { ...bay, cutOuts: [...(bay.cutOuts ?? []), piece] } };
}

/** Puts a piece back into the part it was cut out of; what was said of it by name is said of nothing then. */
export function putBack(project: Project, at: number): Project {
  const { cutOuts = [], ...bay } = project.bay;
  const kept = cutOuts.filter((_, i) => i !== at);
  return { ...project, bay: kept.length === 0 ? bay : { ...bay, cutOuts: kept } };
}
