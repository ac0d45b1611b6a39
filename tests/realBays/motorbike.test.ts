import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { isLeftOut } from '../../shared/document/project/skinOfPart.ts';
import { openMesh } from '../../shared/geometry/meshImport/openMesh.ts';
import { placeMesh } from '../../shared/geometry/meshImport/placeMesh.ts';
import { withoutParts } from '../../shared/geometry/withoutParts.ts';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import { readProject } from '../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';
import { layBreaches } from '../oracles/layInvariants.ts';
import { hasMesh, motorbikeFolder, SKIPPED } from './motorbike.ts';

function filesOf(folder: string): ProjectFiles {
  const read = (name: string) => ({ path: name, bytes: new Uint8Array(readFileSync(path.join(folder, name))) });
  return {
    projectText: readFileSync(path.join(folder, 'project.json'), 'utf8'),
    files: ['bay.obj', 'hoses.csv', 'ends.csv'].map(read),
  };
}

describe.skipIf(!hasMesh)(`a real motorbike${hasMesh ? '' : ` (${SKIPPED})`}`, () => {
  it('has both coolant hoses laid, and by brute force neither touches anything', async () => {
    const files = filesOf(motorbikeFolder());
    const end = await runJob('layRuns', files, UNWATCHED, newJobMemory());
    if (end.kind !== 'done') throw new Error(JSON.stringify(end));
    const { lays } = end.output;
    expect(lays.map((l) => [l.run, l.outcome, l.reason])).toEqual([
      ['pump-to-radiator', 'laid', undefined],
      ['head-to-radiator', 'laid', undefined],
    ]);
    const read = readProject(files);
    if (!read.ok) throw new Error('the project does not read');
    const { project, runs } = read.value.resolved;
    const opened = await openMesh('bay.obj', files.files[0]!.bytes);
    if (!opened.ok) throw new Error('the mesh does not open');
    const mesh = withoutParts(placeMesh(opened.value.mesh, 'm', '+z'), (part) => isLeftOut(project, part));
    for (const lay of lays) {
      const run = runs.find((r) => r.run.id === lay.run)!;
      const others = lays.filter((l) => l.run !== lay.run);
      expect(layBreaches(lay, run, mesh, others, { clearanceMm: 13, spacingMm: 13 })).toEqual([]);
    }
  }, 240_000);
});
