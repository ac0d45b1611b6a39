import { degreesToRadians } from '../../base/units.ts';
import type { RockPose } from '../../document/lay/schema.ts';
import type { Body, Motion, Project } from '../../document/project/schema.ts';
import { AT_REST, type RigidMotion, rigidMotion } from '../../geometry/rigidMotion.ts';

/** Poses tried at most beside rest: six ranges, each at both its ends. */
const MOST_TOGETHER = 2 ** 6;

const PARTS = [
  { word: 'roll', unit: 'degrees', range: (m: Motion) => m.rollDeg },
  { word: 'pitch', unit: 'degrees', range: (m: Motion) => m.pitchDeg },
  { word: 'yaw', unit: 'degrees', range: (m: Motion) => m.yawDeg },
  { word: 'x', unit: 'mm', range: (m: Motion) => m.shiftMm.x },
  { word: 'y', unit: 'mm', range: (m: Motion) => m.shiftMm.y },
  { word: 'z', unit: 'mm', range: (m: Motion) => m.shiftMm.z },
] as const;

/** One value for each of PARTS. */
type Corner = readonly number[];

/**
 * The extremes of a project's motions: rest first, then every combination of the ends of the ranges. A small rigid
 * movement carries every place almost in a straight line, so what is worst is worst in a corner of the ranges. Where
 * several bodies move and all their combinations are more than 64, each body rocks while the others stand. No moving
 * body gives no poses.
 */
export function rockPoses(project: Pick<Project, 'bay'>): RockPose[] {
  const moving = project.bay.bodies.flatMap((body) => {
    const corners = body.motion === undefined ? [] : cornersOf(body.motion);
    return corners.length < 2 ? [] : [{ body, corners }];
  });
  if (moving.length === 0) return [];
  const together = moving.reduce((n, { corners }) => n * corners.length, 1);
  const extremes =
    together <= MOST_TOGETHER
      ? moving.reduce<Placed[][]>(
          (poses, { body, corners }) => poses.flatMap((pose) => corners.map((corner) => [...pose, { body, corner }])),
          [[]],
        )
      : moving.flatMap(({ body, corners }) => corners.map((corner) => [{ body, corner }]));
  return [REST_POSE, ...extremes.map(poseOf).filter((p) => p.bodies.length > 0)];
}

interface Placed {
  readonly body: Body;
  readonly corner: Corner;
}

export const REST_POSE: RockPose = { name: 'at rest', bodies: [] };

function cornersOf(motion: Motion): Corner[] {
  return PARTS.reduce<number[][]>(
    (corners, { range }) => {
      const ends = [...new Set(range(motion))];
      return corners.flatMap((corner) => ends.map((end) => [...corner, end]));
    },
    [[]],
  );
}

function poseOf(placed: readonly Placed[]): RockPose {
  const moved = placed.filter(({ corner }) => corner.some((v) => v !== 0));
  return {
    name: moved.map(({ body, corner }) => `${body.id} at ${cornerText(corner)}`).join('; '),
    bodies: moved.map(({ body, corner }) => {
      const [rollDeg, pitchDeg, yawDeg, x, y, z] = corner as [number, number, number, number, number, number];
      return { body: body.id, rollDeg, pitchDeg, yawDeg, shiftMm: [x, y, z] as [number, number, number] };
    }),
  };
}

function cornerText(corner: Corner): string {
  const texts = (unit: string): string[] =>
    PARTS.flatMap((part, i) => {
      const value = corner[i] as number;
      return part.unit !== unit || value === 0 ? [] : [`${part.word} ${value > 0 ? '+' : ''}${value}`];
    });
  const [turns, shifts] = [texts('degrees'), texts('mm')];
  return [
    ...(turns.length === 0 ? [] : [`${turns.join(', ')} degrees`]),
    ...(shifts.length === 0 ? [] : [`${shifts.join(', ')} mm`]),
  ].join(', ');
}

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
