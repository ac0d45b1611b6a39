import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, distance, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { buildRunField, HELD_SLOPE, skinMargins } from '../../../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';

it('changes by no more per mm moved than it says, within as many mm as it was asked for', () => {
  const random = seededRandom(11);
  const { bay, project } = blockBay(3, 14, 2);
  const held = project.runs.flatMap(({ a, b }) => [a.port.seatPoint, b.port.seatPoint]);
  const skinMm = new Map(bay.skins.map(({ skin }) => [skin.id, 23]));
  const points: Vec3[] = [
    [0, 0, 0],
    [80, 40, 60],
  ];
  const field = buildRunField(bay, buildTubeField([{ run: 'other', points, radiusMm: 8 }]), {
    skinMm,
    tubeMm: 17,
    held,
  });
  const { min, max } = field.bounds;
  const along = (k: 0 | 1 | 2): number => min[k] + (max[k] - min[k]) * random();
  const direction = (): Vec3 => unit([random() - 0.5, random() - 0.5, random() - 0.5]);
  const seen = new Set<number>();
  for (let i = 0; i < 20_000; i++) {
    // Half of them about the held places, where it is steepest.
    const near = held[i % held.length] as Vec3;
    const middle: Vec3 = i % 2 === 0 ? [along(0), along(1), along(2)] : addScaled(near, direction(), 120 * random());
    const withinMm = 30 * random();
    const steepest = field.steepest(...middle, withinMm);
    seen.add(steepest);
    const [p, q] = [0, 1].map(() => addScaled(middle, direction(), withinMm * random())) as [Vec3, Vec3];
    const change = Math.abs(field.marginMm(...p, 200) - field.marginMm(...q, 200));
    expect(change).toBeLessThanOrEqual(steepest * distance(p, q) + 1e-6);
  }
  expect([...seen].sort()).toEqual([1, 1 + HELD_SLOPE]);
});

it('bounds the margins of each distance asked, however many others were asked for in the same bay before', () => {
  const random = seededRandom(12);
  const { bay } = blockBay(3, 14, 2);
  const askedMm = [10, 20, 30, 40, 50, 60, 10, 30];
  const keepsOf = (mm: number) => ({
    skinMm: new Map(bay.skins.map(({ skin }) => [skin.id, mm])),
    tubeMm: 0,
    held: [],
  });
  for (const mm of askedMm) {
    const margins = skinMargins(bay, keepsOf(mm));
    const field = buildRunField(bay, buildTubeField([]), keepsOf(mm));
    // A bay of its own, that nothing was asked in.
    const apart = skinMargins({ ...bay }, keepsOf(mm));
    for (let i = 0; i < 200; i++) {
      const [x, y, z] = [0, 1, 2].map((k) => {
        const [least, most] = [field.bounds.min[k as 0], field.bounds.max[k as 0]];
        return least + (most - least) * random();
      }) as [number, number, number];
      expect(margins(x, y, z)).toBe(apart(x, y, z));
    }
  }
});
