import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import type { ProjectFiles } from '../../../shared/jobs/contract.ts';
import { readProject } from '../../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { cutVerdict } from '../../../shared/sheets/bench/cutVerdict.ts';
import { smallBay } from '../../electron/smallBay.ts';

const SECOND = {
  id: 'second',
  name: 'Second',
  a: { port: 'left-2', end: 'straight-6' },
  b: { port: 'right-2', end: 'straight-6' },
};

/** The small rig with a second run beside the first, the first with the given slack. */
function files(slack: number): ProjectFiles {
  const all = smallBay();
  const project = JSON.parse(all['project.json'] as string);
  const beside = (port: { id: string; seatPoint: number[] }) => ({
    ...port,
    id: `${port.id}-2`,
    seatPoint: [port.seatPoint[0], 90, 60],
  });
  project.ports.push(...project.ports.map(beside));
  const [first] = project.runs;
  project.runs = [
    { ...first, slack },
    { ...first, ...SECOND },
  ];
  const encoder = new TextEncoder();
  const named = ['bay.stl', 'hoses.csv', 'ends.csv'].map((path) => {
    const content = all[path]!;
    return { path, bytes: typeof content === 'string' ? encoder.encode(content) : content };
  });
  return { projectText: JSON.stringify(project), files: named };
}

async function lay(input: ProjectFiles & { runs?: string[]; earlier?: LayReport }): Promise<LayReport> {
  const end = await runJob('layRuns', input, UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

function reasons(report: LayReport, now: ProjectFiles, run: string): readonly string[] {
  const read = readProject(now);
  if (!read.ok) throw new Error('the rig does not read');
  return cutVerdict({ report, currentInputHash: read.value.inputHash, currentRunHashes: read.value.runHashes }, run)
    .reasons;
}

it('a run that was edited stays stale when only another one is laid again, and the other is fresh', async () => {
  const first = await lay(files(0.05));
  expect(reasons(first, files(0.05), 'feed')).toEqual([]);
  const edited = files(0.052);
  expect(reasons(first, edited, 'feed')[0]).toMatch(/changed/);
  expect(reasons(first, edited, 'second')).toEqual([]);
  const again = await lay({ ...edited, runs: ['second'], earlier: first });
  expect(reasons(again, edited, 'feed')[0]).toMatch(/changed/);
  expect(reasons(again, edited, 'second')).toEqual([]);
  const both = await lay({ ...edited, runs: ['feed'], earlier: again });
  expect(reasons(both, edited, 'feed')).toEqual([]);
});
