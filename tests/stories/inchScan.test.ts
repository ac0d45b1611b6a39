import { describe, expect, test } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { newProject } from '../../shared/document/project/newProject.ts';
import { rescaleBay } from '../../shared/document/project/resizeBay.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';

/** A bay 1.4 m wide as a scanner wrote it, in inches, with a reference bar of 300 mm that reads 11.83. */
const WIDTH_IN = 55.3;
const BAR_READS = 11.83;

const obj = new TextEncoder().encode(
  `o bay\nv 0 0 0\nv ${WIDTH_IN} 0 0\nv ${WIDTH_IN} 30 0\nv 0 30 18\nf 1 2 3\nf 1 3 4\no bar\nv 0 0 20\nv ${BAR_READS} 0 20\nv 0 1 20\nf 5 6 7\n`,
);

describe('a scan in inches with no unit in its file', () => {
  test('inches are offered first, since as millimetres it would be no bay', async () => {
    const look = await runJob('lookAtMeshes', { files: [{ path: 'bay.obj', bytes: obj }] }, UNWATCHED, newJobMemory());
    expect(look.kind === 'done' && look.output.unit).toBe('in');
    expect(look.kind === 'done' && look.output.parts).toEqual(['bay', 'bar']);
  });

  test('the bar then measures 300.5: 0.16 % long, and a rescale makes it 300.0 and nothing else', () => {
    const measuredMm = BAR_READS * 25.4;
    expect(measuredMm).toBeCloseTo(300.5, 1);
    expect((measuredMm / 300 - 1) * 100).toBeCloseTo(0.16, 2);
    const project = newProject({
      name: 'Bay',
      meshes: [{ path: 'bay.obj', sha256: '0'.repeat(64) }],
      unit: 'in',
      upAxis: '+z',
      scanUncertaintyMm: 0.6,
      tables: { hoses: ['hoses.csv'], ends: ['ends.csv'], sleeves: [] },
    });
    const scaled = rescaleBay(project, 300 / measuredMm);
    expect(measuredMm * (scaled.bay.scale ?? 1)).toBeCloseTo(300, 9);
    expect(scaled.bay.scanUncertaintyMm).toBe(0.6);
  });

  test('nothing is patched: the mesh has the triangles of the file', async () => {
    const look = await runJob('lookAtMeshes', { files: [{ path: 'bay.obj', bytes: obj }] }, UNWATCHED, newJobMemory());
    expect(look.kind === 'done' && look.output.triangles).toBe(3);
  });
});
