import type { Vec3 } from '../../base/vec3.ts';
import type { Thing } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredRunClearance, requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import { type Bvh, nearestDistance, nearestPoint, newNearest } from '../../geometry/bvh.ts';
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
export function skinNeighbour(bay: BayIndex, skin: IndexedSkin, requiredMm: number): Neighbour {
  return new SkinNeighbour(bay, skin, requiredMm);
}

class SkinNeighbour implements Neighbour {
  readonly requiredMm: number;
  private readonly bay: BayIndex;
  private readonly id: string;
  private readonly bvh: Bvh;

  constructor(bay: BayIndex, { skin, bvh }: IndexedSkin, requiredMm: number) {
    this.requiredMm = requiredMm;
    this.bay = bay;
    this.id = skin.id;
    this.bvh = bvh;
  }

  distanceTo(p: Vec3, boundMm: number): number {
    return nearestDistance(this.bvh, p[0], p[1], p[2], boundMm);
  }

  describe(p: Vec3): { thing: Thing; onThing: Vec3 } {
    const near = newNearest();
    nearestPoint(this.bvh, p[0], p[1], p[2], Infinity, near);
    const part = partOfTriangle(this.bay.mesh, near.triangle).name;
    return { thing: { kind: 'skin', id: this.id, part }, onThing: [near.x, near.y, near.z] };
  }
}

/** One of the runs of a field of tubes. */
export function runNeighbour(all: TubeField, run: string, requiredMm: number): Neighbour {
  return new RunNeighbour(tubesOfRuns(all, new Set([run])), run, requiredMm);
}

class RunNeighbour implements Neighbour {
  readonly requiredMm: number;
  private readonly tubes: TubeField;
  private readonly run: string;
  private readonly near = newNearestTube();

  constructor(tubes: TubeField, run: string, requiredMm: number) {
    this.requiredMm = requiredMm;
    this.tubes = tubes;
    this.run = run;
  }

  distanceTo(p: Vec3, boundMm: number): number {
    return nearestTube(this.tubes, p[0], p[1], p[2], boundMm, this.near) ? this.near.gapMm : Infinity;
  }

  describe(p: Vec3): { thing: Thing; onThing: Vec3 } {
    const { near } = this;
    nearestTube(this.tubes, p[0], p[1], p[2], Infinity, near);
    return { thing: { kind: 'run', id: this.run }, onThing: [near.x, near.y, near.z] };
  }
}
