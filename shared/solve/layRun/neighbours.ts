import type { Vec3 } from '../../base/vec3.ts';
import type { Thing } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredRunClearance, requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import { nearestDistance, nearestPoint, newNearest } from '../../geometry/bvh.ts';
import { partOfTriangle } from '../../geometry/triMesh.ts';
import type { BayIndex, IndexedSkin } from '../bay/bayIndex.ts';
import { nearestTube, newNearestTube, type TubeField, tubesOfRuns } from '../bay/tubeField.ts';

/** Something the run is measured against: exact distance from a centreline point to its surface (Infinity beyond the bound), and the nearest point on it. */
export interface Neighbour {
  readonly requiredMm: number;
  distanceTo(point: Vec3, boundMm: number): number;
  describe(point: Vec3): { thing: Thing; onThing: Vec3 };
}

/** Every skin of the bay and every other run, with the clearance that one run keeps from each. */
export function neighboursOf(project: Project, run: string, bay: BayIndex, others: TubeField): Neighbour[] {
  return [
    ...bay.skins.map((s) => skinNeighbour(bay, s, requiredSkinClearance(project, run, s.skin).requiredMm)),
    ...[...new Set(others.tubes.map((t) => t.run))].map((other) =>
      runNeighbour(others, other, requiredRunClearance(project, run, other).requiredMm),
    ),
  ];
}

/** One skin of a bay; `requiredMm` is what is kept from it. */
export function skinNeighbour(bay: BayIndex, { skin, bvh }: IndexedSkin, requiredMm: number): Neighbour {
  return {
    requiredMm,
    distanceTo: (p, boundMm) => nearestDistance(bvh, p[0], p[1], p[2], boundMm),
    describe: (p) => {
      const near = newNearest();
      nearestPoint(bvh, p[0], p[1], p[2], Infinity, near);
      const part = partOfTriangle(bay.mesh, near.triangle).name;
      return { thing: { kind: 'skin', id: skin.id, part }, onThing: [near.x, near.y, near.z] };
    },
  };
}

/** One of the runs of a field of tubes. */
export function runNeighbour(all: TubeField, run: string, requiredMm: number): Neighbour {
  const field = tubesOfRuns(all, new Set([run]));
  const near = newNearestTube();
  return {
    requiredMm,
    distanceTo: (p, boundMm) => (nearestTube(field, p[0], p[1], p[2], boundMm, near) ? near.gapMm : Infinity),
    describe: (p) => {
      nearestTube(field, p[0], p[1], p[2], Infinity, near);
      return { thing: { kind: 'run', id: run }, onThing: [near.x, near.y, near.z] };
    },
  };
}
