import type { Vec3 } from '../../base/vec3.ts';
import { partOf, type Watch } from '../../base/watch.ts';
import type { RockPose } from '../../document/lay/schema.ts';
import { CHASSIS_BODY, type Project } from '../../document/project/schema.ts';
import { bodyOfPart, skinOfPart } from '../../document/project/skinOfPart.ts';
import { nearestDistance } from '../../geometry/bvh.ts';
import type { TriMesh } from '../../geometry/triMesh.ts';
import { withoutParts } from '../../geometry/withoutParts.ts';
import { type BayIndex, buildBayIndex } from '../bay/bayIndex.ts';
import { rockPoses } from './rockPoses.ts';

/** The parts of the bay that move as one, indexed where they were scanned. */
export interface BodyBay {
  readonly body: string;
  readonly bay: BayIndex;
}

/**
 * The bay taken apart: one index for each body that moves in any of the poses, and one, called chassis, for all that
 * stands. A distance to a moved body is asked in the frame of its scan, so nothing is indexed again for a pose. Where
 * nothing moves, nothing is indexed. mesh: bay frame, as scanned.
 */
export function bodyBays(project: Project, mesh: TriMesh, watch: Watch): BodyBay[] {
  const moving = movingBodies(rockPoses(project));
  if (moving.size === 0) return [];
  const bodyOf = (part: string): string => standingBody(bodyOfPart(project, part).id, moving);
  const bodies = [CHASSIS_BODY.id, ...moving];
  return bodies.flatMap((body, i) => {
    const own = withoutParts(mesh, (part) => bodyOf(part) !== body);
    if (own.indices.length === 0) return [];
    const part = partOf(watch, i / bodies.length, (i + 1) / bodies.length);
    return [{ body, bay: buildBayIndex(own, (name) => skinOfPart(project, name), part) }];
  });
}

/** The bodies that move in any of the poses. */
export function movingBodies(poses: readonly RockPose[]): ReadonlySet<string> {
  return new Set(poses.flatMap((pose) => pose.bodies.map((b) => b.body)));
}

/** The body as rock knows it: one that never moves is the chassis. */
export function standingBody(body: string | undefined, moving: ReadonlySet<string>): string {
  return body !== undefined && moving.has(body) ? body : CHASSIS_BODY.id;
}

/** The body that has the surface nearest to a place, mm, as scanned; the chassis where the bay is empty. */
export function nearestBody(bays: readonly BodyBay[], [x, y, z]: Vec3): string {
  let best = CHASSIS_BODY.id;
  let leastMm = Number.POSITIVE_INFINITY;
  for (const { body, bay } of bays)
    for (const { bvh } of bay.skins) {
      const mm = nearestDistance(bvh, x, y, z, leastMm);
      if (mm >= leastMm) continue;
      leastMm = mm;
      best = body;
    }
  return best;
}
