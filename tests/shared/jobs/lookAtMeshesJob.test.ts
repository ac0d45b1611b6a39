import { expect, it } from 'vitest';
import { Cancelled, UNWATCHED } from '../../../shared/base/watch.ts';
import { lookAtMeshesJob } from '../../../shared/jobs/lookAtMeshesJob.ts';

/** A binary STL of so many triangles in a strip along x. */
function strip(count: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + 50 * count));
  view.setUint32(80, count, true);
  for (let i = 0; i < count; i++) {
    const corners = [i, 0, 0, i + 1, 0, 0, i, 1, 0];
    for (let k = 0; k < 9; k++) view.setFloat32(84 + 50 * i + 12 + 4 * k, corners[k] as number, true);
  }
  return new Uint8Array(view.buffer);
}

const COUNT = 20_000;
const FILES = [{ path: 'strip.stl', bytes: strip(COUNT) }];

it('tells how far it is within one file, and never falls back', async () => {
  const told: number[] = [];
  const watch = { ...UNWATCHED, report: ({ fraction }: { fraction: number }) => void told.push(fraction) };
  const looked = await lookAtMeshesJob({ files: FILES }, watch);
  expect(looked.ok && looked.value.triangles).toBe(COUNT);
  expect(told.length).toBeGreaterThan(4);
  expect(told).toEqual(told.toSorted((a, b) => a - b));
  expect(told.at(-1)).toBeGreaterThan(0.8);
});

it('stops in the middle of a file that is no longer wanted', async () => {
  const told: number[] = [];
  const watch = {
    ...UNWATCHED,
    isCancelled: () => told.length > 2,
    report: ({ fraction }: { fraction: number }) => void told.push(fraction),
  };
  await expect(lookAtMeshesJob({ files: FILES }, watch)).rejects.toBeInstanceOf(Cancelled);
  expect(told).toHaveLength(3);
});
