import type { Project, Vehicle } from '../../../shared/document/project/schema.ts';

/** Whose bay it is; undefined = not said. */
export function setVehicle(project: Project, vehicle: Vehicle | undefined): Project {
  if (project.vehicle === vehicle) return project;
  const { vehicle: _old, ...bare } = project;
  return vehicle === undefined ? bare : { ...bare, vehicle };
}
