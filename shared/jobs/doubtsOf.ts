import type { Problem } from '../base/result.ts';
import { UNWATCHED } from '../base/watch.ts';
import type { Project } from '../document/project/schema.ts';
import { boxOfMesh } from '../geometry/box.ts';
import { buildBvh, nearestDistance } from '../geometry/bvh.ts';
import type { TriMesh } from '../geometry/triMesh.ts';

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
  const bvh = buildBvh(mesh, undefined, UNWATCHED);
  return project.ports.flatMap((port, i) => {
    const [x, y, z] = port.seatPoint;
    if (nearestDistance(bvh, x, y, z, PORT_OFF_BAY_MM) < PORT_OFF_BAY_MM) return [];
    return [
      {
        path: `ports[${i}].seatPoint`,
        message: `${port.name} stands more than ${PORT_OFF_BAY_MM} mm from anything in the bay`,
        got: JSON.stringify(port.seatPoint),
      },
    ];
  });
}
