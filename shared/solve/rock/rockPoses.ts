import type { RockPose } from '../../document/lay/schema.ts';
import type { Body, Motion, Project } from '../../document/project/schema.ts';

/** Poses tried at most beside rest, of bodies that move together or of one. */
const MOST_POSES = 2 ** 6;

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
 * The extremes of a project's motions: rest first, then every combination of both ends and the middle, rest, of each range.
 * Slack is least and pull greatest at ends, since lengths are convex in a small movement; clearance, bend and twist may be
 * worst where one range is at rest and another at its end. Where that is more than 64 extremes, the ends alone are combined;
 * where that is still more, each body rocks while the others stand. No moving body gives no poses.
 */
export function rockPoses(project: Pick<Project, 'bay'>): RockPose[] {
  const moving = project.bay.bodies.flatMap((body) => (hasMotion(body) ? [body] : []));
  if (moving.length === 0) return [];
  const choices = [
    () => together(moving, withRest),
    () => together(moving, endsOnly),
    () => apart(moving, withRest),
    () => apart(moving, endsOnly),
  ];
  const extremes = choices.map((of) => of()).find((poses) => poses !== undefined) ?? [];
  return [REST_POSE, ...extremes.map(poseOf).filter((p) => p.bodies.length > 0)];
}

type Levels = (range: readonly [number, number]) => number[];

const withRest: Levels = ([least, most]) => [...new Set([least, 0, most])];
const endsOnly: Levels = (range) => [...new Set(range)];

interface MovingBody extends Body {
  readonly motion: Motion;
}

function hasMotion(body: Body): body is Body & MovingBody {
  const { motion } = body;
  return motion !== undefined && PARTS.some(({ range }) => range(motion).some((end) => end !== 0));
}

function together(bodies: readonly MovingBody[], levels: Levels): Placed[][] | undefined {
  const count = bodies.reduce((n, { motion }) => n * cornerCount(motion, levels), 1);
  if (count > MOST_POSES) return undefined;
  return bodies.reduce<Placed[][]>(
    (poses, body) =>
      poses.flatMap((pose) => cornersOf(body.motion, levels).map((corner) => [...pose, { body, corner }])),
    [[]],
  );
}

function apart(bodies: readonly MovingBody[], levels: Levels): Placed[][] | undefined {
  if (bodies.some(({ motion }) => cornerCount(motion, levels) > MOST_POSES)) return undefined;
  return bodies.flatMap((body) => cornersOf(body.motion, levels).map((corner) => [{ body, corner }]));
}

interface Placed {
  readonly body: Body;
  readonly corner: Corner;
}

const REST_POSE: RockPose = { name: 'at rest', bodies: [] };

function cornerCount(motion: Motion, levels: Levels): number {
  return PARTS.reduce((n, { range }) => n * levels(range(motion)).length, 1);
}

function cornersOf(motion: Motion, levels: Levels): Corner[] {
  return PARTS.reduce<number[][]>(
    (corners, { range }) => corners.flatMap((corner) => levels(range(motion)).map((end) => [...corner, end])),
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
