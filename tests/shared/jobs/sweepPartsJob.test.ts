import { describe, expect, it } from 'vitest';
import { Cancelled, UNWATCHED } from '../../../shared/base/watch.ts';
import type { Sweep } from '../../../shared/geometry/sweep/sweep.ts';
import type { TriMesh } from '../../../shared/geometry/triMesh.ts';
import { sweepPartsJob } from '../../../shared/jobs/sweepPartsJob.ts';

/** Two triangles 10 mm wide on the plane z = 0, 100 mm apart, each a part. */
const MESH: TriMesh = {
  positions: new Float32Array([0, 0, 0, 10, 0, 0, 0, 10, 0, 100, 0, 0, 110, 0, 0, 100, 10, 0]),
  indices: new Uint32Array([0, 1, 2, 3, 4, 5]),
  parts: [
    { name: 'rod', firstTriangle: 0, triangleCount: 1 },
    { name: 'fork', firstTriangle: 1, triangleCount: 1 },
  ],
};

async function swept(mesh: TriMesh, sweep: Sweep): Promise<{ low: number[]; high: number[] }> {
  const result = await sweepPartsJob({ mesh, sweep }, UNWATCHED);
  if (!result.ok) throw new Error('it was refused');
  const { corners } = result.value;
  const along = (k: number): number[] => [...corners].filter((_, i) => i % 3 === k);
  return { low: [0, 1, 2].map((k) => Math.min(...along(k))), high: [0, 1, 2].map((k) => Math.max(...along(k))) };
}

describe('what parts sweep, to be drawn', () => {
  it('reaches from end to end of a stroke, of all of them', async () => {
    const stroke: Sweep = { kind: 'stroke', direction: [0, 0, 1], fromMm: -5, toMm: 40 };
    expect(await swept(MESH, stroke)).toEqual({ low: [0, 0, -5], high: [110, 10, 40] });
  });

  it('comes to the far side in half a turn', async () => {
    const half = await swept(
      { ...MESH, parts: MESH.parts.slice(0, 1) },
      { kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromRad: 0, toRad: Math.PI },
    );
    expect(half.low[0]).toBeCloseTo(-10, 1);
    expect(half.low[1]).toBeGreaterThan(-10.2);
    expect(half.high[0]).toBeCloseTo(10, 1);
  });

  it.each([
    ['a stroke', { kind: 'stroke', direction: [0, 0, 1], fromMm: 0, toMm: 1 }],
    ['a part of a turn', { kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromRad: 0, toRad: 1 }],
    ['a whole turn', { kind: 'turn', point: [0, 0, 0], axis: [0, 0, 1], fromRad: 0, toRad: 7 }],
  ] as const)('stops within %s when it is asked to, and tells how far it is', async (_, sweep) => {
    const told: number[] = [];
    let asked = 0;
    const watch = {
      ...UNWATCHED,
      isCancelled: () => ++asked > 1,
      report: ({ fraction }: { fraction: number }) => void told.push(fraction),
    };
    await expect(sweepPartsJob({ mesh: MESH, sweep }, watch)).rejects.toBeInstanceOf(Cancelled);
    expect(told).toEqual([0]);
  });
});
