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

it('with no run to lay, hoses that were laid apart are measured against each other and stay as they lie', async () => {
  const now = files(0.05);
  const [feed, second] = await Promise.all(['feed', 'second'].map((run) => lay({ ...now, runs: [run] })));
  const apart: LayReport = { ...feed!, lays: [...feed!.lays, ...second!.lays] };
  const towards = (report: LayReport): string[] =>
    report.lays.flatMap(({ run, clearances }) =>
      clearances.flatMap(({ to }) => (to.kind === 'run' ? [`${run} to ${to.id}`] : [])),
    );
  expect(towards(apart)).toEqual([]);
  const measured = await lay({ ...now, runs: [], earlier: apart });
  expect(towards(measured)).toEqual(['feed to second', 'second to feed']);
  expect(measured.lays.map(({ centreline }) => centreline)).toEqual(apart.lays.map(({ centreline }) => centreline));
});
