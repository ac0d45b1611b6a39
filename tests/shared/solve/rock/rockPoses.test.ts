import { expect, it } from 'vitest';
import { motionsAt } from '../../../../shared/document/lay/motionsAt.ts';
import { Motion } from '../../../../shared/document/project/schema.ts';
import { AT_REST, movePoint } from '../../../../shared/geometry/rigidMotion.ts';
import { rockPoses } from '../../../../shared/solve/rock/rockPoses.ts';
import { sampleProject } from '../../../arbitraries/projects.ts';
import type { Ranges } from '../../../arbitraries/rockRig.ts';

function projectOf(bodies: Record<string, Ranges>) {
  const { bay } = sampleProject();
  const moving = Object.entries(bodies).map(([id, ranges]) => ({
    id,
    name: id,
    parts: [],
    motion: Motion.parse({ pivot: [100, 0, 50], ...ranges }),
  }));
  return { bay: { ...bay, bodies: moving } };
}

it('has rest, and both ends and rest of every range in every combination, and names them', () => {
  const poses = rockPoses(projectOf({ engine: { rollDeg: [-2, 2], shiftMm: { z: [0, 3] } } }));
  expect(poses.map((p) => p.name)).toEqual([
    'at rest',
    'engine at roll -2 degrees',
    'engine at roll -2 degrees, z +3 mm',
    'engine at z +3 mm',
    'engine at roll +2 degrees',
    'engine at roll +2 degrees, z +3 mm',
  ]);
  expect(poses[2]?.bodies).toEqual([{ body: 'engine', rollDeg: -2, pitchDeg: 0, yawDeg: 0, shiftMm: [0, 0, 3] }]);
});

it('has each extreme once, and none where nothing moves', () => {
  const all = { rollDeg: [-1, 1], pitchDeg: [-1, 1], yawDeg: [-1, 1] } as const;
  const shiftMm = { x: [-1, 1], y: [-1, 1], z: [-1, 1] } as const;
  const poses = rockPoses(projectOf({ engine: { ...all, shiftMm } as unknown as Ranges }));
  // Six ranges: 729 with their middles, 64 with their ends alone.
  expect(poses.length).toBe(1 + 64);
  expect(new Set(poses.map((p) => p.name)).size).toBe(65);
  // Three ranges with their middles: 27, one of which is rest itself.
  expect(rockPoses(projectOf({ engine: all as unknown as Ranges })).length).toBe(27);
  expect(rockPoses(projectOf({ engine: {} }))).toEqual([]);
  expect(rockPoses(sampleProject())).toEqual([]);
});

it('moves several bodies together while that is at most 64 extremes, else one at a time', () => {
  const three: Ranges = { rollDeg: [-1, 1], pitchDeg: [-1, 1], yawDeg: [-1, 1] };
  const together = rockPoses(projectOf({ engine: three, radiator: three }));
  expect(together.length).toBe(1 + 64);
  expect(together.every((p) => p.bodies.length !== 1)).toBe(true);
  const four: Ranges = { ...three, shiftMm: { x: [-1, 1] } };
  const apart = rockPoses(projectOf({ engine: four, radiator: three }));
  // 81 of the engine are too many with their middles, 16 are not.
  expect(apart.length).toBe(1 + 16 + 8);
  expect(apart.every((p) => p.bodies.length <= 1)).toBe(true);
});

it('carries places to a share of a pose', () => {
  const project = projectOf({ engine: { shiftMm: { x: [0, 10] } } });
  const [, pose] = rockPoses(project);
  if (pose === undefined) throw new Error('no pose');
  expect(movePoint(motionsAt(project, pose, 0.5)('engine'), [1, 2, 3])).toEqual([6, 2, 3]);
  expect(motionsAt(project, pose, 0.5)('chassis')).toBe(AT_REST);
});
