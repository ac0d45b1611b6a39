import type { Vec3 } from '../../shared/base/vec3.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { Lay, Rock, RockExtreme } from '../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../shared/document/project/resolve.ts';
import { Motion, PLAIN_SKIN, type Run } from '../../shared/document/project/schema.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../shared/solve/layRun/layRun.ts';
import { bodyBays } from '../../shared/solve/rock/bodyBays.ts';
import { rockLays } from '../../shared/solve/rock/rockLays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from './rig.ts';

type Triple = [number, number, number];
type Range = [number, number];

/** What a test says of a motion; the rest is 0. */
export interface Ranges {
  readonly rollDeg?: Range;
  readonly pitchDeg?: Range;
  readonly yawDeg?: Range;
  readonly shiftMm?: { readonly x?: Range; readonly y?: Range; readonly z?: Range };
}

export interface RockRig {
  /** mm between the two mouths */
  readonly apart?: number;
  readonly slack?: number;
  readonly bodyA?: string;
  readonly bodyB?: string;
  /** absent = the seat of END B */
  readonly pivot?: Triple;
  readonly motions: Readonly<Record<string, Ranges>>;
  readonly parts?: Readonly<Record<string, string[]>>;
  readonly run?: Partial<Run>;
  readonly mesh?: TriMesh;
  /** where all of the rig is put; a rigid movement */
  readonly move?: (p: Vec3) => Triple;
  readonly reversed?: boolean;
}

/** N mm2, of the rig's hose. */
export const RIG_STIFFNESS_NMM2 = 5e6;

/**
 * Two straight ends that face each other along X, END A's seat at the origin, mouths 35 mm before their seats. A hose so
 * stiff and light that weight does not count, clamped at its mouths: no straight tails.
 */
export function rockRig(rig: RockRig): { resolved: ResolvedProject; lay: Lay; rock: Rock | undefined } {
  const { apart = 500, slack = 0.05, bodyA, bodyB, move = (p) => [p[0], p[1], p[2]], reversed = false } = rig;
  const hose = exampleHose({ minBendRadiusMm: 60, bendingStiffnessNmm2: RIG_STIFFNESS_NMM2, weightKgPerM: 0.1 });
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const turned = (v: Vec3): Triple => {
    const [o, p] = [move([0, 0, 0]), move(v)];
    return [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
  };
  const port = (id: string, x: number, axis: Vec3, body: string | undefined) =>
    examplePort(id, {
      seatPoint: move([x, 0, 0]),
      axis: turned(axis),
      up: turned([0, 0, 1]),
      ...(body === undefined ? {} : { body }),
    });
  const a = port('a', 0, [1, 0, 0], bodyA);
  const b = port('b', apart + 70, [-1, 0, 0], bodyB);
  const resolved = oneRunProject(reversed ? [b, a] : [a, b], [end, end], hose, { slack, ...rig.run });
  resolved.project.overrides.push({ rule: 'straight-tail', value: 0, reason: 'closed forms are clamped at the mouth' });
  for (const [id, ranges] of Object.entries(rig.motions)) {
    const motion = Motion.parse({ pivot: move(rig.pivot ?? [apart + 70, 0, 0]), ...ranges });
    resolved.project.bay.bodies.push({ id, name: id, parts: rig.parts?.[id] ?? [], motion });
  }
  const bay = rig.mesh === undefined ? emptyBay() : buildBayIndex(rig.mesh, () => PLAIN_SKIN, UNWATCHED);
  const lay = layRun({ project: resolved.project, bay }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
  const [out] = rockLays(resolved, bodyBays(resolved.project, bay.mesh, UNWATCHED), [lay], UNWATCHED);
  return { resolved, lay, rock: out?.rock };
}

/** The extreme with this name. */
export function extremeAt(rock: Rock | undefined, name: string): RockExtreme {
  const found = rock?.extremes.find((e) => e.pose.name === name);
  if (found === undefined)
    throw new Error(`no pose ${name}: ${rock?.extremes.map((e) => e.pose.name).join(' | ') ?? 'no rock'}`);
  return found;
}
