import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { degreesApart } from '../../shared/base/units.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { namedPaths } from '../../shared/document/project/namedPaths.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';

const folder = path.resolve(import.meta.dirname, '../../models/bays/two-elbow-rig');

/** Closed form: straights of 50, 100 and 50 mm and two quarter circles of R100, in square planes. */
it('the shipped rig, mesh and all, comes out at 514.159 mm and 270 degrees, with nothing that forbids cutting', async () => {
  const projectText = readFileSync(path.join(folder, 'project.json'), 'utf8');
  const files = namedPaths(projectText).map((named) => ({
    path: named.path,
    bytes: new Uint8Array(readFileSync(path.join(folder, named.path))),
  }));
  const end = await runJob('layRuns', { projectText, files }, UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  const [lay] = end.output.lays;
  expect(lay?.outcome).toBe('laid');
  expect(Math.abs((lay?.overallLengthMm ?? 0) - (200 + 100 * Math.PI))).toBeLessThan(0.05);
  expect(lay?.clock.kind).toBe('angle');
  if (lay?.clock.kind === 'angle') expect(degreesApart(lay.clock.deg, 270)).toBeLessThan(0.05);
  expect(end.output.findings.filter((f) => f.severity === 'stop')).toEqual([]);
});
