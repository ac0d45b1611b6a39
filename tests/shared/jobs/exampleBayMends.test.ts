import { expect, it } from 'vitest';
import { readProjectFiles } from '../../../electron/node/readProjectFiles.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { applyMend } from '../../../shared/document/mends/applyMend.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import type { JobInput, JobName, JobOutput } from '../../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';

const RUN = 'crankcase-breather';
const memory = newJobMemory();

async function done<N extends JobName>(name: N, input: JobInput<N>): Promise<JobOutput<N>> {
  const end = await runJob(name, input, UNWATCHED, memory);
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

it('the example bay: a bare breather near the manifold is turned away from it by another end, as laying it so shows', async () => {
  const read = await readProjectFiles('models/bays/hillclimb');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { projectText, files } = read.value;
  const report = await done('layRuns', { projectText, files, runs: [RUN] });
  const grave = report.findings.filter((f) => f.severity !== 'note');
  expect(grave.map((f) => f.check)).toContain('heatDistance');
  const { answers } = await done('tryMends', { projectText, files, run: RUN, report, checks: ['heatDistance'] });
  const turned = answers.find(({ mend }) => mend.edit.kind === 'end');
  expect(turned?.words).toMatch(/^A \d+ degree aluminium end at END [AB] keeps .* from .*manifold/);
  expect(turned?.cured[0]?.marginMm).toBeGreaterThan(0);
  const parsed = parseProject(projectText);
  if (!parsed.ok || turned === undefined) throw new Error('no answer');
  const mended = serialiseProject(applyMend(parsed.value, turned.mend));
  const laid = await done('layRuns', { projectText: mended, files, runs: [RUN], earlier: report });
  expect(laid.lays[0]?.cutLengthMm).toBeCloseTo(turned.lay.cutLengthMm, 6);
  expect(laid.findings).toEqual(turned.findings);
  expect(laid.findings.filter((f) => f.check === 'heatDistance')).toEqual([]);
}, 400_000);
