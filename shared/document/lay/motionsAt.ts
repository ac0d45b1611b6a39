import { degreesToRadians } from '../../base/units.ts';
import { AT_REST, type RigidMotion, rigidMotion } from '../../geometry/rigidMotion.ts';
import type { Project } from '../project/schema.ts';
import type { RockPose } from './schema.ts';

/** How each body stands at a share of a pose: 0 = as scanned, 1 = the pose, beyond 1 further the same way. */
export function motionsAt(project: Pick<Project, 'bay'>, pose: RockPose, share: number): (body: string) => RigidMotion {
  const motions = new Map(
    pose.bodies.flatMap(({ body, rollDeg, pitchDeg, yawDeg, shiftMm }) => {
      const motion = project.bay.bodies.find((b) => b.id === body)?.motion;
      if (motion === undefined) return [];
      const rad = (deg: number): number => degreesToRadians(deg * share);
      const [x, y, z] = shiftMm;
      return [
        [
          body,
          rigidMotion(motion.pivot, rad(rollDeg), rad(pitchDeg), rad(yawDeg), [x * share, y * share, z * share]),
        ] as const,
      ];
    }),
  );
  return (body) => motions.get(body) ?? AT_REST;
}
