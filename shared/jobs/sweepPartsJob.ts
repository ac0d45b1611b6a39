import { good, type Result } from '../base/result.ts';
import { partOf, type Watch } from '../base/watch.ts';
import { sweptSurface } from '../geometry/sweep/withSweeps.ts';
import type { JobInput, JobOutput } from './contract.ts';

/** The job `sweepParts`: what each part of a mesh sweeps, one after the other. */
export async function sweepPartsJob(
  { mesh, sweep }: JobInput<'sweepParts'>,
  watch: Watch,
): Promise<Result<JobOutput<'sweepParts'>>> {
  const parts = mesh.parts.filter(({ triangleCount }) => triangleCount > 0);
  const lists = parts.map(
    (part, i) => sweptSurface(mesh, part, sweep, partOf(watch, i / parts.length, (i + 1) / parts.length)).corners,
  );
  const corners = new Float32Array(lists.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const list of lists) {
    corners.set(list, at);
    at += list.length;
  }
  return good({ corners });
}
