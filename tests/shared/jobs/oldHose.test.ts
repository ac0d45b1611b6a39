import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { storyFiles } from '../../stories/storyBay.ts';
import { SAWING } from './mendRigs.ts';

/** A rubber hose made in May 2021: five years in an engine bay (kitplanes.com, "Maintenance matters" 39). */
function filesOn(today: string | undefined) {
  const [run] = SAWING.project.runs;
  const [hose] = SAWING.hoses;
  if (run === undefined || hose === undefined) throw new Error('the rig has one run and its hose');
  const files = storyFiles({
    ...SAWING,
    hoses: [{ ...hose, core: 'nbr' }],
    project: { ...SAWING.project, runs: [{ ...run, madeOn: '2021-05' }] },
  });
  return { ...files, run: 'line', ...(today === undefined ? {} : { today }) };
}

async function lives(job: 'endTrial' | 'waysRound', today?: string): Promise<string[]> {
  const end = await runJob(job, filesOn(today), UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  const choices: readonly { readonly findings: readonly Finding[] }[] =
    'entries' in end.output ? end.output.entries : end.output.ways;
  expect(choices.length).toBeGreaterThan(0);
  return choices.flatMap(({ findings }) => findings.filter((f) => f.check === 'hoseLife').map((f) => f.severity));
}

it.each(['endTrial', 'waysRound'] as const)(
  '%s tells of a hose that is too old on the day it is asked',
  async (job) => {
    expect(await lives(job, '2026-06-01')).toContain('look');
    expect(await lives(job, '2026-05-31')).toEqual([]);
    expect(await lives(job)).toEqual([]);
  },
);
