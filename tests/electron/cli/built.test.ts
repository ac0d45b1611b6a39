import path from 'node:path';
import { expect, test } from 'vitest';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';
import { foldersWithWorker, runHere } from './runHere.ts';

function hosewright(worker: string, args: readonly string[]) {
  return runHere(foldersWithWorker(worker), args);
}

/** The small rig, with what the bench wrote down of its hose. */
function rigWith(asBuilt: object) {
  const { runs } = JSON.parse(smallBay()['project.json'] as string) as { runs: object[] };
  return smallBay({ runs: runs.map((run) => ({ ...run, asBuilt })) });
}

test('a proved hose is not clocked again; a cut measured after it is taken', async () => {
  await using scratch = await scratchFolder();
  const folder = await bundled({ 'node/jobWorker': 'electron/node/jobWorker.ts' });
  const worker = path.join(folder, '.build', 'node');
  const proof = { on: '2026-05-12', pressureKpa: 5250, clockDeg: 268 };
  await scratch.write(rigWith({ clockDeg: 268, proof }));
  const project = scratch.folder;
  const laid = await hosewright(worker, ['lay', project, '--out', project]);
  expect(laid.err).toBe('');
  const run = (JSON.parse(rigWith({})['project.json'] as string) as { runs: { id: string }[] }).runs[0]?.id as string;
  const asked = ['built', project, '--run', run, '--lay', path.join(project, 'lay-report.json')];

  const turned = await hosewright(worker, [...asked, '--clock', '271']);
  expect(turned).toMatchObject({ code: 2, out: '' });
  expect(turned.err).toContain('proof-tested on 2026-05-12');
  const cut = await hosewright(worker, [...asked, '--cut', '566mm', '--json']);
  expect(cut.err).not.toContain('proof-tested');
  expect(JSON.parse(cut.out)).toHaveProperty('built');
}, 120_000);

test('the tag of a hose tells its ends and its proof tests, and once it is proved its proof', async () => {
  await using scratch = await scratchFolder();
  const folder = await bundled({ 'node/jobWorker': 'electron/node/jobWorker.ts' });
  const worker = path.join(folder, '.build', 'node');
  await scratch.write(smallBay());
  const open = await hosewright(worker, ['tags', scratch.folder]);
  expect(open.code).toBe(0);
  expect(open.out).toMatch(/END A +\S/);
  expect(open.out).toMatch(/Tested on +______/);
  expect(open.out).toContain('Proof test ');
  expect(open.out).toContain('stand behind a screen');
  await scratch.write(rigWith({ proof: { on: '2026-05-12', pressureKpa: 5250 } }));
  const proved = await hosewright(worker, ['tags', scratch.folder]);
  expect(proved.out).toMatch(/Tested on +2026-05-12/);
  expect(proved.out).not.toContain('Proof test ');
  const none = await hosewright(worker, ['tags', path.join(scratch.folder, 'nowhere')]);
  expect(none.code).toBe(2);
});
