import { describe, expect, it } from 'vitest';
import { heightTrack, nearestArc, placeAt, radiusTrack } from '../../../renderer/state/layPlaces.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';

/** 100 mm straight along +x, then a quarter round of 90 mm radius up to +z, a point every degree and every 2 mm. */
function bendUp(): Lay['centreline'] {
  const points: [number, number, number][] = [];
  const arcLengthMm: number[] = [];
  for (let x = 0; x <= 100; x += 2) {
    points.push([x, 0, 0]);
    arcLengthMm.push(x);
  }
  for (let deg = 1; deg <= 90; deg++) {
    const angle = (deg * Math.PI) / 180;
    points.push([100 + 90 * Math.sin(angle), 0, 90 * (1 - Math.cos(angle))]);
    arcLengthMm.push(100 + 90 * angle);
  }
  return { points, arcLengthMm };
}

describe('places along a laid hose', () => {
  it('finds a place from its arc length and the arc length from its place', () => {
    const line = bendUp();
    for (const arc of [0, 33.5, 100, 140, 100 + 45 * Math.PI]) {
      const place = placeAt(line, arc);
      expect(place).not.toBeNull();
      expect(Math.abs(nearestArc(line, place?.point ?? [0, 0, 0]) - arc)).toBeLessThanOrEqual(1.001);
    }
    expect(placeAt(line, 33.5)).toEqual({ point: [33.5, 0, 0], along: [1, 0, 0] });
    expect(placeAt(line, 1e6)?.point[2]).toBeCloseTo(90, 9);
    expect(placeAt(line, -5)?.point).toEqual([0, 0, 0]);
    expect(placeAt({ points: [], arcLengthMm: [] }, 3)).toBeNull();
  });

  it('shows infinity on the straight and the true radius in the round', () => {
    const track = radiusTrack(bendUp());
    const at = (arc: number): number => track.find((p) => p.arcLengthMm >= arc)?.value ?? Number.NaN;
    expect(at(50)).toBe(Number.POSITIVE_INFINITY);
    expect(at(170)).toBeCloseTo(90, 1);
  });

  it('counts height from the lowest point', () => {
    const heights = heightTrack(bendUp()).map((p) => p.value);
    expect([heights[0], Math.max(...heights)].map((h) => Number(h?.toFixed(6)))).toEqual([0, 90]);
  });
});
