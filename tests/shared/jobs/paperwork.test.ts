import { expect, it } from 'vitest';
import { readProjectFiles } from '../../../electron/node/readProjectFiles.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Paperwork, Vehicle } from '../../../shared/document/project/schema.ts';
import type { ProjectFiles } from '../../../shared/jobs/contract.ts';
import { readProject } from '../../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';

/** The rig of the known answer, its papers as asked. */
async function rig(paperwork?: Paperwork, vehicle?: Vehicle): Promise<ProjectFiles> {
  const read = await readProjectFiles('models/bays/two-elbow-rig');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { projectText, files } = read.value;
  const project = JSON.parse(projectText);
  const more = { ...(paperwork === undefined ? {} : { paperwork }), ...(vehicle === undefined ? {} : { vehicle }) };
  return { files, projectText: JSON.stringify({ ...project, ...more }) };
}

async function hashOf(paperwork?: Paperwork, vehicle?: Vehicle): Promise<string | undefined> {
  const read = readProject(await rig(paperwork, vehicle));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.runHashes['two-elbow'];
}

it('a hose stays laid when its papers speak otherwise, but not when its clock tolerance changes', async () => {
  const bare = await hashOf();
  expect(await hashOf({ clockDialect: 'far-at-twelve', finestInch: 32, paper: 'Letter' })).toBe(bare);
  expect(await hashOf({ clockTolerance: 'army-tm' })).not.toBe(bare);
});

it('it is looked at anew when it is in another vehicle', async () => {
  expect(await hashOf(undefined, 'boat')).not.toBe(await hashOf(undefined, 'car'));
});

it('the known answer with its lengths by name, and the tolerance of the table that the project goes by', async () => {
  const lay = async (paperwork?: Paperwork): Promise<Lay> => {
    const end = await runJob('layRuns', await rig(paperwork), UNWATCHED, newJobMemory());
    if (end.kind !== 'done') throw new Error(JSON.stringify(end));
    return end.output.lays[0]!;
  };
  const usual = await lay();
  expect(usual.clock).toMatchObject({ toleranceDeg: 3 });
  const overall = usual.lengths?.find(({ convention }) => convention === 'elbow-centreline');
  expect(overall?.lengthMm).toBeCloseTo(514.159, 2);
  expect(overall?.addedMm).toEqual({ a: 47, b: 47 });
  expect((await lay({ clockTolerance: 'army-tm' })).clock).toMatchObject({ toleranceDeg: 5 });
});
