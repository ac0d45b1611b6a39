import { describe, expect, it } from 'vitest';
import { sweptBySkin } from '../../../renderer/scene/sweptBySkin.ts';
import type { OpenDocument } from '../../../renderer/state/documentStore.ts';
import type { Skin } from '../../../shared/document/project/schema.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** A triangle 10 mm wide on the plane z = 0, and one of another part. */
const BAY: Bay = {
  positions: new Float32Array([0, 0, 0, 10, 0, 0, 0, 10, 0, 100, 0, 0, 110, 0, 0, 100, 10, 0]),
  indices: new Uint32Array([0, 1, 2, 3, 4, 5]),
  parts: [
    { name: 'rod', firstTriangle: 0, triangleCount: 1, skin: 'rod', body: 'chassis' },
    { name: 'block', firstTriangle: 1, triangleCount: 1, skin: 'plain', body: 'chassis' },
  ],
};

function swept(sweep: Skin['sweep']): { low: number[]; high: number[] } | null {
  const skin: Skin = { id: 'rod', name: 'Rod', kind: 'moving', parts: ['rod'], ...(sweep && { sweep }) };
  const project = { ...SAMPLE_PROJECT, bay: { ...SAMPLE_PROJECT.bay, skins: [skin] } };
  const corners = sweptBySkin(BAY, project, skin);
  if (corners === null) return null;
  const along = (k: number): number[] => [...corners].filter((_, i) => i % 3 === k);
  return { low: [0, 1, 2].map((k) => Math.min(...along(k))), high: [0, 1, 2].map((k) => Math.max(...along(k))) };
}

describe('what a moving skin sweeps, to be drawn', () => {
  it('reaches from end to end of a stroke, of its own parts alone', () => {
    expect(swept({ kind: 'stroke', direction: [0, 0, 1], fromMm: -5, toMm: 40 })).toEqual({
      low: [0, 0, -5],
      high: [10, 10, 40],
    });
  });

  it('comes to the far side in half a turn', () => {
    const half = swept({ kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromDeg: 0, toDeg: 180 });
    expect(half?.low[0]).toBeCloseTo(-10, 1);
    expect(half?.low[1]).toBeGreaterThan(-10.2);
    expect(half?.high[0]).toBeCloseTo(10, 1);
  });

  it('is nothing where it is not said how it moves', () => {
    expect(swept(undefined)).toBeNull();
  });
});
