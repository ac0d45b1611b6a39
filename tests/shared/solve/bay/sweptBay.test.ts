import { describe, expect, test } from 'vitest';
import { SWEEP_WITHIN_MM } from '../../../../shared/base/tolerances.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { rescaleBay } from '../../../../shared/document/project/resizeBay.ts';
import { Skin } from '../../../../shared/document/project/schema.ts';
import { requiredSkinClearance } from '../../../../shared/document/rules/requiredClearance.ts';
import { nearestDistance } from '../../../../shared/geometry/bvh.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { sampleProject } from '../../../arbitraries/projects.ts';
import { soupOf } from '../../../oracles/randomMesh.ts';

const skin = (sweep?: Skin['sweep']): Skin => ({
  id: 'fan',
  name: 'Fan',
  kind: 'moving',
  parts: ['soup'],
  ...(sweep === undefined ? {} : { sweep }),
});
/** A blade from 20 to 60 mm along x, 10 mm high. */
const BLADE = soupOf([
  [20, 0, 0],
  [60, 0, 0],
  [60, 0, 10],
]);

function distanceTo(of: Skin, at: readonly [number, number, number]): number {
  const { skins } = buildBayIndex(BLADE, () => of, UNWATCHED);
  return nearestDistance(skins[0]!.bvh, ...at, Infinity);
}

describe('the bay with a part that moves', () => {
  test('is asked for what the part sweeps: a hose behind a fan is near it, though its blade was scanned elsewhere', () => {
    expect(distanceTo(skin(), [-80, 0, 0])).toBeCloseTo(100, 3);
    const whole = distanceTo(skin({ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1] }), [-80, 0, 0]);
    expect(whole).toBeLessThanOrEqual(20 + SWEEP_WITHIN_MM);
    expect(whole).toBeGreaterThan(16);
    const half = skin({ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 2], fromDeg: 0, toDeg: 90 });
    expect(distanceTo(half, [0, 80, 0])).toBeCloseTo(20, 1);
    expect(distanceTo(skin({ kind: 'stroke', direction: [3, 0, 0], fromMm: 0, toMm: 30 }), [95, 0, 0])).toBeCloseTo(
      5,
      3,
    );
  });

  test('keeps how finely the sweep is known on top', () => {
    const project = sampleProject();
    const still = requiredSkinClearance(project, 'r1', skin()).requiredMm;
    const turns = skin({ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1] });
    expect(requiredSkinClearance(project, 'r1', turns).requiredMm).toBe(still + SWEEP_WITHIN_MM);
  });

  test('takes the axis along when the bay is scaled', () => {
    const { bay, ...more } = sampleProject();
    const turns = skin({ kind: 'turn', point: [10, 20, 30], axis: [0, 0, 1] });
    const [scaled] = rescaleBay({ ...more, bay: { ...bay, skins: [turns] } }, 2).bay.skins;
    expect(scaled?.sweep).toEqual({ kind: 'turn', point: [20, 40, 60], axis: [0, 0, 1] });
  });

  test.each([
    [{ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromDeg: 0 }, /needs fromDeg and toDeg/],
    [{ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 0] }, /zero vector/],
    [{ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromDeg: 9, toDeg: 9 }, /toDeg above fromDeg/],
    [{ kind: 'stroke', direction: [0, 0, 1], fromMm: 5, toMm: 1 }, /toMm above fromMm/],
  ])('refuses %j with a sentence', (sweep, message) => {
    const read = Skin.safeParse({ id: 'fan', name: 'Fan', kind: 'moving', parts: [], sweep });
    expect(read.success).toBe(false);
    expect(read.error?.message).toMatch(message);
  });

  test('is only of a moving skin', () => {
    const sweep = { kind: 'stroke', direction: [0, 0, 1], fromMm: 0, toMm: 1 };
    const read = (kind: string) => Skin.safeParse({ id: 'fan', name: 'Fan', kind, parts: [], sweep });
    expect(read('moving').success).toBe(true);
    expect(read('plain').error?.message).toMatch(/only a moving skin sweeps/);
  });
});
