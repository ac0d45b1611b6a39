import { spawn } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { mendCommand } from '../../../electron/cli/commands/mend.ts';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import { Mends } from '../../../shared/document/mends/schema.ts';
import { Project } from '../../../shared/document/project/schema.ts';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';

let folder: string;
beforeAll(async () => {
  folder = await bundled({
    'cli/hosewright': 'electron/cli/hosewright.ts',
    'node/jobWorker': 'electron/node/jobWorker.ts',
  });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

function hosewright(cwd: string, args: readonly string[]) {
  return new Promise<{ code: number | null; out: string; err: string }>((resolve) => {
    const child = spawn(process.execPath, [path.join(folder, '.build/cli/hosewright.js'), ...args], { cwd });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

/** The small rig with its hose cut already, so short that pressure pulls it taut. */
function cutTooShort() {
  const { runs } = JSON.parse(smallBay()['project.json'] as string) as { runs: object[] };
  return smallBay({ runs: runs.map((run) => ({ ...run, cutLengthMm: 566 })) });
}

test('tells what would mend a run, and makes the one that is asked for in the project', async () => {
  await using scratch = await scratchFolder();
  await scratch.write(cutTooShort());
  const laid = await hosewright(scratch.folder, ['lay', '.', '--out', '.']);
  expect(laid.code).toBe(1);
  const from = ['--lay', 'lay-report.json'];
  const told = await hosewright(scratch.folder, ['mend', '.', ...from, '--json']);
  const [mends] = JSON.parse(told.out).map((one: unknown) => Mends.parse(one)) as Mends[];
  expect(mends?.answers[0]?.mend.edit).toEqual({ kind: 'new-hose' });
  expect(told.code).toBe(1);
  const words = await hosewright(scratch.folder, ['mend', '.', 'feed', ...from, '--check', 'slack']);
  expect(words.err).toBe('');
  expect(words.out).toContain('1  A new hose cut to the plan');
  const none = await hosewright(scratch.folder, ['mend', '.', 'feed', ...from, '--apply', '9', '--save']);
  expect(none).toMatchObject({ code: 2, err: expect.stringContaining('--apply') });
  const made = await hosewright(scratch.folder, ['mend', '.', 'feed', ...from, '--apply', '1', '--save', '--out', '.']);
  expect(made.out).toContain('saved: ');
  const project = Project.parse(JSON.parse(await readFile(path.join(scratch.folder, 'project.json'), 'utf8')));
  expect(project.runs[0]?.cutLengthMm).toBeUndefined();
  // What is written beside it is the lay of the saved project: laid again, it is the same.
  const report = LayReport.parse(JSON.parse(await readFile(path.join(scratch.folder, 'lay-report.json'), 'utf8')));
  const again = LayReport.parse(JSON.parse((await hosewright(scratch.folder, ['lay', '.', '--json'])).out));
  expect(report.lays[0]?.cutLengthMm).toBeCloseTo(again.lays[0]?.cutLengthMm ?? 0, 6);
  expect(report.lays[0]?.inputHash).toBe(again.lays[0]?.inputHash);
  expect(report.project).toEqual(again.project);
}, 120_000);

test('refuses what it cannot do, every mistake at once', () => {
  const problems = (words: string[], values: Record<string, unknown>) => {
    const read = mendCommand.read(words, values as never);
    return read.ok ? [] : read.problems.map(({ path: where }) => where);
  };
  expect(problems(['bay'], {})).toEqual([]);
  expect(problems(['bay', 'feed'], { apply: '2', save: true })).toEqual([]);
  expect(problems(['bay', 'feed'], { check: ['slack', 'colour'] })).toEqual(['--check']);
  expect(problems(['bay', 'feed'], { apply: '2' })).toEqual(['--apply']);
  expect(problems(['bay', 'feed'], { save: true })).toEqual(['--apply']);
  expect(problems(['bay'], { apply: '0', save: true })).toEqual(['--apply', '--apply']);
});
