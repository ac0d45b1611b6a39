import type { Vec3 } from '../../shared/base/vec3.ts';
import { hexHead } from './bolt.ts';
import { frameAt, moved } from './frame.ts';
import { lathe, type Turned } from './lathe.ts';
import { join, type Solid } from './solid.ts';

/** Outside diameter of the 37 degree flare thread by dash, inches, from memory of SAE J514 (7/16 for -4 to 1 5/16 for -16). */
const THREAD_INCHES: Record<number, number> = { 4: 7 / 16, 6: 9 / 16, 8: 3 / 4, 10: 7 / 8, 12: 17 / 16, 16: 21 / 16 };

export function threadRadiusMm(dash: number): number {
  return ((THREAD_INCHES[dash] ?? (dash / 16) * 1.4) * 25.4) / 2;
}

/**
 * A union screwed into a part: a hexagon, a threaded nose with grooves, and a flat ring for a seat, whose middle is
 * `seatPoint` and whose normal is `axis`. The bore is blind. `stand` = from the part's surface to the seat, mm.
 */
export function union(seatPoint: Vec3, axis: Vec3, dash: number, stand: number): Solid {
  const thread = threadRadiusMm(dash);
  const bore = thread * 0.55;
  const root = frameAt(seatPoint, axis);
  const hexHeight = Math.min(stand * 0.45, thread * 0.8);
  const profile: Turned[] = [[-stand - 6, thread * 0.9]];
  const grooves = 3;
  const noseStart = -stand + hexHeight;
  const pitch = (stand - hexHeight - 1.5) / grooves;
  for (let k = 0; k < grooves; k++) {
    profile.push([noseStart + pitch * (k + 0.1), thread * 0.9], [noseStart + pitch * (k + 0.5), thread]);
  }
  profile.push([-1, thread * 0.9], [0, thread * 0.84], [0, bore], [-Math.min(12, stand * 0.8), bore * 0.96]);
  return join(hexHead(moved(root, -stand - 1), thread * 2 * 1.3, hexHeight + 1), lathe(root, profile, 24));
}
