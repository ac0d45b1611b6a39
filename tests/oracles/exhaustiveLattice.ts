import { add, addScaled, dot, scale, type Vec3 } from '../../shared/base/vec3.ts';

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

export interface LatticePose {
  /** in steps of the radius */
  readonly step: Vec3;
  readonly direction: Vec3;
}

/**
 * The shortest way made of straights of one radius and quarter turns of that radius between poses on a grid of that spacing, by
 * Dijkstra over every place and heading of a box of steps: nothing is left out, nothing is estimated. marginAt: above 0
 * where the centreline may be, asked every `radius / 40`. Undefined where the lattice has no way; others may still exist.
 */
export function exhaustiveLattice(
  from: LatticePose,
  to: LatticePose,
  radiusMm: number,
  most: Vec3,
  marginAt: (point: Vec3) => number,
): number | undefined {
  const keyOf = ({ step, direction }: LatticePose): string => `${step.join()},${direction.map(Math.round).join()}`;
  const best = new Map<string, number>([[keyOf(from), 0]]);
  const open: { pose: LatticePose; mm: number }[] = [{ pose: from, mm: 0 }];
  while (open.length > 0) {
    open.sort((a, b) => b.mm - a.mm);
    const { pose, mm } = open.pop()!;
    if (mm > best.get(keyOf(pose))!) continue;
    if (keyOf(pose) === keyOf(to)) return mm;
    for (const direction of AXES) {
      if (dot(direction, pose.direction) < 0) continue;
      const straight = dot(direction, pose.direction) > 0;
      const step = straight ? add(pose.step, direction) : add(add(pose.step, pose.direction), direction);
      if (step.some((v, k) => v < 0 || v > most[k]!)) continue;
      const next = { pose: { step, direction }, mm: mm + radiusMm * (straight ? 1 : Math.PI / 2) };
      if (next.mm >= (best.get(keyOf(next.pose)) ?? Number.POSITIVE_INFINITY)) continue;
      if (!isClear(pose, direction, straight, radiusMm, marginAt)) continue;
      best.set(keyOf(next.pose), next.mm);
      open.push(next);
    }
  }
  return undefined;
}

function isClear(
  { step, direction }: LatticePose,
  to: Vec3,
  straight: boolean,
  radiusMm: number,
  marginAt: (point: Vec3) => number,
): boolean {
  const from = scale(step, radiusMm);
  return Array.from({ length: 41 }, (_, i) => {
    const t = i / 40;
    if (straight) return addScaled(from, direction, t * radiusMm);
    const turn = (t * Math.PI) / 2;
    return addScaled(addScaled(from, direction, radiusMm * Math.sin(turn)), to, radiusMm * (1 - Math.cos(turn)));
  }).every((point) => marginAt(point) > 0);
}
