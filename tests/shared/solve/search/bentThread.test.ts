import { expect, it } from 'vitest';
import { distance, dot, scale, sub, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { bentThread } from '../../../../shared/solve/search/bentThread.ts';
import { bentWays } from '../../../../shared/solve/search/bentWays.ts';
import type { ClearSpace } from '../../../../shared/solve/search/clearSpace.ts';
import { narrowGuides } from '../../../../shared/solve/search/narrowGuide.ts';
import { analyticField } from './analyticField.ts';

const RADIUS_MM = 80;
const KEEP_MM = 12;
const BOUNDS = { min: [-300, -300, -300], max: [300, 300, 300] } as const;
const DOWN: Vec3 = [-1, 0, 0];

/** The start is headed away from the wall: the way turns about, then through the hole. */
const field = analyticField([{ kind: 'wall', x: 0, holes: [{ y: 60, z: 40, radius: KEEP_MM + 3 }] }], KEEP_MM, BOUNDS);
const space: ClearSpace = { field, offsetMm: 0, plugs: [] };
const start = { point: [120, -40, 0] as Vec3, direction: scale(DOWN, -1) };
const goal = { point: [-160, 0, 0] as Vec3, direction: DOWN };

/** As looked for first and last: see narrowWays. */
const GUIDES = [
  { cellMm: 10, looksForPlaces: false },
  { cellMm: 8, looksForPlaces: true },
] as const;
const LOOK = { fineness: 1, radiusShare: 1, explores: false, mostStates: 100_000 };

function thread(around: ClearSpace, starts = [start], goals = [goal]) {
  const guides = narrowGuides(around, GUIDES[1], starts, goals);
  return bentThread(around, guides, starts, goals, RADIUS_MM, () => 1, LOOK, UNWATCHED);
}

it('leaves and arrives as the ends point, bends about as a hose may, and is hardly anywhere short', () => {
  const { line } = thread(space);
  expect(line).toBeDefined();
  const headings = line!.slice(1).map((p, i) => unit(sub(p, line![i]!)));
  expect(dot(headings[0]!, start.direction)).toBeGreaterThan(0.9);
  expect(dot(headings.at(-1)!, goal.direction)).toBeGreaterThan(0.9);
  // Where the two halves meet, and where it gives way, it may turn faster.
  const sharp = headings.slice(1).filter((h, i) => dot(h, headings[i]!) < Math.cos(0.35 + 0.01));
  expect(sharp.length).toBeLessThanOrEqual(5);
  for (const [x, y, z] of line!) expect(field.marginMm(x, y, z, 50)).toBeGreaterThan(-0.5);
  expect(distance(line![0]!, start.point)).toBe(0);
  expect(distance(line!.at(-1)!, goal.point)).toBe(0);
});

it.each(GUIDES)('becomes a way through the hole, the same one each time, by %o', (guides) => {
  const ends = [[{ clockRad: 0, pose: start }], [{ clockRad: 0, pose: goal }]] as const;
  const limits = { mostStates: 100_000, attempts: 4 };
  const find = () => bentWays(space, [{ ...LOOK, guides }], ends[0], ends[1], RADIUS_MM, limits, UNWATCHED);
  const first = find();
  expect(first.candidate).toBeDefined();
  expect(find()).toEqual(first);
});

it('leaves as that one of several ends points which it says it took', () => {
  const aside = { point: [120, -40, 0] as Vec3, direction: [0, 0, 1] as Vec3 };
  const found = thread(space, [aside, start], [goal]);
  expect(found.line![0]).toEqual([aside, start][found.start]!.point);
  const heading = unit(sub(found.line![1]!, found.line![0]!));
  expect(dot(heading, [aside, start][found.start]!.direction)).toBeGreaterThan(0.9);
});

it('answers none where the wall has no hole, and soon', () => {
  const shut: ClearSpace = { ...space, field: analyticField([{ kind: 'wall', x: 0, holes: [] }], KEEP_MM, BOUNDS) };
  expect(thread(shut)).toMatchObject({ expanded: 0, emptied: true });
});

/** A second wall close behind, its hole far aside: the guide leads straight on from the first hole, where no hose can turn so soon. */
const ASIDE = analyticField(
  [
    {
      kind: 'wall',
      x: 0,
      holes: [
        { y: 60, z: 40, radius: KEEP_MM + 3 },
        { y: -220, z: -200, radius: KEEP_MM + 3 },
      ],
    },
    {
      kind: 'wall',
      x: -60,
      holes: [
        { y: -120, z: 200, radius: KEEP_MM + 3 },
        { y: -220, z: -200, radius: KEEP_MM + 3 },
      ],
    },
  ],
  KEEP_MM,
  BOUNDS,
);

it('explored, finds the holes that the guide leads past, with fewer states than led', () => {
  const around = { ...space, field: ASIDE };
  const guides = narrowGuides(around, GUIDES[1], [start], [goal]);
  const line = (explores: boolean) =>
    bentThread(around, guides, [start], [goal], RADIUS_MM, () => 1, { ...LOOK, explores }, UNWATCHED);
  const [led, explored] = [line(false), line(true)];
  expect(explored.line).toBeDefined();
  expect(explored.expanded).toBeLessThan(led.expanded);
  for (const [x, y, z] of explored.line!) expect(ASIDE.marginMm(x, y, z, 50)).toBeGreaterThan(-0.5);
  expect(line(true)).toEqual(explored);
});
