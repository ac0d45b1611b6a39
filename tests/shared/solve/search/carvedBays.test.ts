import { describe, expect, it } from 'vitest';
import { angleBetween, distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import {
  pathEnd,
  pathLengthMm,
  posesAtJoints,
  samplePath,
  tightestRadiusMm,
} from '../../../../shared/geometry/arcLinePath.ts';
import { type CarvedBay, type CarvedKind, carvedBay } from '../../../arbitraries/carvedBays.ts';
import { searchCarved } from '../../../arbitraries/carvedSearch.ts';
import { distanceToPath } from '../../../arbitraries/pathDistance.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';

/** Places asked by brute force on one path. */
const PLACES = 24;

function sparsePlaces(bay: CarvedBay, path: CarvedBay['path']): Vec3[] {
  const all = samplePath(path, 1).map(({ point }) => point);
  const seats = [bay.path.start.point, pathEnd(bay.path).point];
  const away = all.filter((p) => seats.every((seat) => distance(p, seat) >= 2 * bay.keepMm));
  const stride = Math.max(1, Math.floor(away.length / PLACES));
  return away.filter((_, i) => i % stride === 0);
}

describe('bays carved round a hose', () => {
  it.each<[CarvedKind, number]>([
    ['open', 5],
    ['cluttered', 16],
    ['walls', 22],
    ['pipe', 3],
    ['crate', 9],
  ])('%s: the hose they were carved round keeps radius and clearance, by brute force', (kind, seed) => {
    const bay = carvedBay(seed, kind);
    expect(tightestRadiusMm(bay.path)).toBeGreaterThanOrEqual(bay.minRadiusMm);
    for (const { direction } of posesAtJoints(bay.path)) expect(Math.hypot(...direction)).toBeCloseTo(1, 9);
    const length = pathLengthMm(bay.between);
    expect(length).toBeGreaterThan(150);
    expect(length).toBeLessThanOrEqual(1500);
    // Within the float32 of mesh coordinates.
    for (const p of sparsePlaces(bay, bay.path))
      expect(bruteForceDistance(bay.mesh, p)).toBeGreaterThan(bay.keepMm + bay.roomMm - 0.01);
  });

  it('tells the distance from a path of arcs as a thousand places on it do', () => {
    const { path } = carvedBay(7, 'pipe');
    const exact = distanceToPath(path);
    const places = samplePath(path, 0.5).map(({ point }) => point);
    for (const p of samplePath(path, 37).map(({ point }): Vec3 => [point[0] + 31, point[1] - 12, point[2] + 5])) {
      const least = Math.min(...places.map((q) => distance(p, q)));
      expect(exact(p)).toBeLessThanOrEqual(least + 1e-9);
      expect(exact(p)).toBeGreaterThan(least - 0.01);
    }
  });

  // The whole 300 are in tests/bench, with the rate of each kind; these are quick ones of every kind. In 217 nothing leads through
  // the wall but a line that gives way, in 117 nothing but one that explores.
  it.each<[CarvedKind, readonly number[]]>([
    ['open', [5, 10, 15, 20, 25, 30, 35, 40]],
    ['cluttered', [1, 16, 21, 26]],
    ['walls', [22, 47, 117, 217]],
    ['pipe', [3, 13, 23, 28, 33, 43]],
    ['crate', [4, 9, 14, 24, 29, 34, 39, 49]],
  ])('%s: a way is found, and keeps what it promises by brute force', (kind, seeds) => {
    for (const seed of seeds) {
      const bay = carvedBay(seed, kind);
      const { outcome, ways } = searchCarved(bay);
      expect([seed, outcome]).toEqual([seed, 'found']);
      const { path, lengthMm } = ways[0]!;
      const joints = posesAtJoints(bay.between);
      expect(distance(path.start.point, joints[0]!.point)).toBeLessThan(1e-5);
      expect(distance(pathEnd(path).point, joints.at(-1)!.point)).toBeLessThan(1e-5);
      expect(angleBetween(path.start.direction, joints[0]!.direction)).toBeLessThan(1e-6);
      expect(angleBetween(pathEnd(path).direction, joints.at(-1)!.direction)).toBeLessThan(1e-6);
      expect(tightestRadiusMm(path)).toBeGreaterThanOrEqual(bay.minRadiusMm * (1 - 1e-9));
      // No longer than the hose they were carved round, but for what the curve of a tube's middle may be off.
      expect(lengthMm).toBeLessThan(1.01 * pathLengthMm(bay.between));
      for (const p of sparsePlaces(bay, path))
        expect(bruteForceDistance(bay.mesh, p)).toBeGreaterThan(bay.keepMm - 0.11);
    }
  });
});
