import { expect, it } from 'vitest';
import { distance, dot, scale, sub, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { bentThread } from '../../../../shared/solve/search/bentThread.ts';
import { bentWays } from '../../../../shared/solve/search/bentWays.ts';
import type { ClearSpace } from '../../../../shared/solve/search/clearSpace.ts';
import { FineGrid } from '../../../../shared/solve/search/fineGrid.ts';
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

it('leaves and arrives as the ends point, bends no sharper than a guess may, gives up no more than it is told', () => {
  const fine = new FineGrid(space, 4);
  const { line } = bentThread(space, fine, start, goal, RADIUS_MM, 5, () => 1, 100_000, UNWATCHED);
  expect(line).toBeDefined();
  const headings = line!.slice(1).map((p, i) => unit(sub(p, line![i]!)));
  expect(dot(headings[0]!, start.direction)).toBeGreaterThan(0.9);
  expect(dot(headings.at(-1)!, goal.direction)).toBeGreaterThan(0.9);
  // Where the two halves meet, places differ by up to a step: only there may the line turn faster.
  const sharp = headings.slice(1).filter((h, i) => dot(h, headings[i]!) < Math.cos(0.25 / 0.9 + 0.01));
  expect(sharp.length).toBeLessThanOrEqual(3);
  for (const [x, y, z] of line!.slice(1, -1))
    expect(field.marginMm(x, y, z, 50)).toBeGreaterThan(-5 - 2 * Math.sqrt(3));
  expect(distance(line![0]!, start.point)).toBe(0);
  expect(distance(line!.at(-1)!, goal.point)).toBe(0);
});

it('becomes a way through the hole, the same one each time', () => {
  const ends = [[{ clockRad: 0, pose: start }], [{ clockRad: 0, pose: goal }]] as const;
  const limits = { shortMm: 5, attempts: 4, mostStates: 100_000 };
  const find = () => bentWays(space, new FineGrid(space, 4), ends[0], ends[1], RADIUS_MM, limits, UNWATCHED);
  const first = find();
  expect(first.candidate).toBeDefined();
  expect(find()).toEqual(first);
});

it('answers none where the wall has no hole', () => {
  const shut: ClearSpace = { ...space, field: analyticField([{ kind: 'wall', x: 0, holes: [] }], KEEP_MM, BOUNDS) };
  const found = bentThread(shut, new FineGrid(shut, 4), start, goal, RADIUS_MM, 5, () => 1, 100_000, UNWATCHED);
  expect(found.line).toBeUndefined();
});
