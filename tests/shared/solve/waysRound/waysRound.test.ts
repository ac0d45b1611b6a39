import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { apartFrom, waysRound } from '../../../../shared/solve/waysRound/waysRound.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

/** A tall post in the middle between two ports that face each other, a little off to one side. */
const post = meshOfBlocks([
  { min: [270, -30, -400], max: [330, 50, 400] },
  { min: [-200, -600, -420], max: [800, 600, -400] },
]);
const bay = buildBayIndex(post, () => PLAIN_SKIN, UNWATCHED);
const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20 });
const project = oneRunProject(
  [
    examplePort('a', { seatPoint: [0, 0, 0], axis: [1, 0, 0] }),
    examplePort('b', { seatPoint: [600, 0, 0], axis: [-1, 0, 0] }),
  ],
  [end, end],
  exampleHose({ minBendRadiusMm: 60 }),
);
const ways = waysRound({ project: project.project, bay }, project.runs[0]!, buildTubeField([]), UNWATCHED);
/** On which side of the post a hose passes its middle. */
const sideOf = (points: readonly (readonly [number, number, number])[]): number =>
  Math.sign(points.reduce((p, q) => (Math.abs(q[0] - 300) < Math.abs(p[0] - 300) ? q : p))[1] - 10);

it('a run past a post is laid on either side of it, the shorter side first, both clean', () => {
  const sides = ways.map(({ centreline }) => sideOf(centreline.points));
  expect(ways.slice(0, 2).map(({ outcome }) => outcome)).toEqual(['laid', 'laid']);
  // The post reaches 50 mm to one side of the line between the ports and 30 to the other: that is the nearer way.
  expect(sides.slice(0, 2)).toEqual([-1, 1]);
  expect(ways[0]!.cutLengthMm).toBeLessThan(ways[1]!.cutLengthMm);
});

it('the place that tells a way from the others is by the post, on its own side', () => {
  const at = apartFrom(ways[1]!, [ways[0]!]);
  expect(Math.abs((at?.[0] ?? 0) - 300)).toBeLessThan(120);
  expect(at?.[1]).toBeGreaterThan(50);
});
