import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { addScaled, distance, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { buildRunField, HELD_SLOPE, type RunField, skinMargins } from '../../../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { withReserve } from '../../../../shared/solve/layRun/reserve.ts';
import { withinSlab } from '../../../../shared/solve/search/slab.ts';
import { underCeiling } from '../../../../shared/solve/search/underCeiling.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';

/** The field of a run among the blocks of a bay and one other hose, and where it is held. */
function fieldAmongBlocks(seed: number): { field: RunField; held: readonly Vec3[] } {
  const { bay, project } = blockBay(seed, 14, 2);
  const held = project.runs.flatMap(({ a, b }) => [a.port.seatPoint, b.port.seatPoint]);
  const skinMm = new Map(bay.skins.map(({ skin }) => [skin.id, 23]));
  const points: Vec3[] = [
    [0, 0, 0],
    [80, 40, 60],
  ];
  const tubes = buildTubeField([{ run: 'other', points, radiusMm: 8 }]);
  return { field: buildRunField(bay, tubes, { skinMm, tubeMm: 17, held }), held };
}

it('changes by no more per mm moved than it says, within as many mm as it was asked for', () => {
  const random = seededRandom(11);
  const { field, held } = fieldAmongBlocks(3);
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

describe('the bounds of a margin', () => {
  it.each(['of a run', 'with a reserve', 'under a ceiling', 'in a slab'] as const)(
    'hold it between them: %s',
    (which) => {
      const random = seededRandom(13);
      const { field: own, held } = fieldAmongBlocks(4);
      const field = {
        'of a run': own,
        'with a reserve': withReserve(own),
        'under a ceiling': underCeiling(own, { ceilingMm: 100 }),
        'in a slab': withinSlab(own, { point: [0, 0, 0], normal: [0, 0, 1], halfMm: 60 }),
      }[which];
      const { min, max } = own.bounds;
      let decided = 0;
      for (let i = 0; i < 8000; i++) {
        const near = held[i % held.length] as Vec3;
        const within = (k: 0 | 1 | 2): number => min[k] - 30 + (max[k] - min[k] + 60) * random();
        const aside = (): number => 80 * (random() - 0.5);
        const [x, y, z]: Vec3 =
          i % 2 === 0 ? [within(0), within(1), within(2)] : [near[0] + aside(), near[1] + aside(), near[2] + aside()];
        const exact = field.marginMm(x, y, z, 1e6);
        expect(field.coarseMarginMm(x, y, z)).toBeLessThanOrEqual(exact + 1e-9);
        expect(field.mostMarginMm(x, y, z)).toBeGreaterThanOrEqual(exact - 1e-9);
        if (field.mostMarginMm(x, y, z) < 0) decided++;
      }
      expect(decided).toBeGreaterThan(100);
    },
  );
});
