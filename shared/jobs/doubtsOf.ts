import type { Problem } from '../base/result.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Project } from '../document/project/schema.ts';
import { boxOfMesh } from '../geometry/box.ts';
import { trianglePointSquared } from '../geometry/trianglePoint.ts';
import { type TriMesh, triangleCount } from '../geometry/triMesh.ts';

/** mm. A bay is no smaller than a carburettor and no larger than a lorry; outside that its unit is doubted. */
const PLAUSIBLE_BAY_MM = { least: 100, most: 10_000 } as const;
/** mm. A port stands on the bay: one further off than an adapter is long is doubted. */
const PORT_OFF_BAY_MM = 100;

/** What does not look right about a bay and the ports on it, though it can be laid in: sentences to be read, not refusals. */
export function doubtsOf(project: Project, mesh: TriMesh): Problem[] {
  const { min, max } = boxOfMesh(mesh);
  const across = Math.max(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  if (across < PLAUSIBLE_BAY_MM.least || across > PLAUSIBLE_BAY_MM.most)
    return [
      {
        path: 'bay.meshes[0].unit',
        message: `the bay comes out ${Math.round(across)} mm across: is the mesh in ${project.bay.meshes[0]?.unit}?`,
      },
    ];
  return project.ports.flatMap((port, i) => {
    if (standsOn(mesh, port.seatPoint)) return [];
    return [
      {
        path: `ports[${i}].seatPoint`,
        message: `${port.name} stands more than ${PORT_OFF_BAY_MM} mm from anything in the bay`,
        got: JSON.stringify(port.seatPoint),
      },
    ];
  });
}

/**
 * Whether anything of a mesh is near a point. Most ports stand on their bay, so its triangles are looked over until one
 * is near: an index of them all costs ten times as much, and the first picture of the bay waits for this.
 */
function standsOn(mesh: TriMesh, point: Vec3): boolean {
  const { positions, indices } = mesh;
  const corners = new Float32Array(9);
  for (let triangle = 0; triangle < triangleCount(mesh); triangle++) {
    for (let corner = 0; corner < 3; corner++) {
      const from = 3 * (indices[3 * triangle + corner] as number);
      for (let axis = 0; axis < 3; axis++) corners[3 * corner + axis] = positions[from + axis] as number;
    }
    if (!mayBeNear(corners, point)) continue;
    if (trianglePointSquared(corners, 0, ...point) < PORT_OFF_BAY_MM ** 2) return true;
  }
  return false;
}

/** Whether a point is near the box round a triangle. */
function mayBeNear(corners: Float32Array, point: Vec3): boolean {
  for (let axis = 0; axis < 3; axis++) {
    const at = point[axis] as number;
    const [a, b, c] = [corners[axis] as number, corners[axis + 3] as number, corners[axis + 6] as number];
    if (Math.min(a, b, c) - at > PORT_OFF_BAY_MM || at - Math.max(a, b, c) > PORT_OFF_BAY_MM) return false;
  }
  return true;
}
