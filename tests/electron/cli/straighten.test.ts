import path from 'node:path';
import { expect, test } from 'vitest';
import { Straightened } from '../../../shared/document/straightened/schema.ts';
import { twoElbowPoints } from '../../oracles/twoElbowRod.ts';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { foldersWithWorker, runHere } from './runHere.ts';

function hosewright(worker: string, args: readonly string[]) {
  return runHere(foldersWithWorker(worker), args);
}

test('a digitised rod becomes cut length and clock', async () => {
  await using scratch = await scratchFolder();
  const folder = await bundled({ 'node/jobWorker': 'electron/node/jobWorker.ts' });
  const worker = path.join(folder, '.build', 'node');
  await scratch.write({
    'rod.csv': twoElbowPoints(52)
      .map((p) => p.map((n) => n / 25.4).join(','))
      .join('\n'),
    'bad.csv': '0,0,0\n1,1\n2,2,b\n',
  });
  const file = path.join(scratch.folder, 'rod.csv');
  const outlets = ['--unit', 'in', '--outlet-a', '0,0,1', '--outlet-b', '1,0,0'];

  const told = await hosewright(worker, ['straighten', file, ...outlets, '--cut-off-a', '47', '--cut-off-b', '47']);
  // Closed form: 514.159 - 94 = 420.159 mm, the clock 270; on paper lengths to cut are rounded up.
  expect(told.out).toContain('CUT    420.2 mm (16 9/16 in)');
  expect(told.out).toContain('CLOCK  270°');
  expect(told.out).toContain('Read the wrong way round it is 90°');
  expect(told.code).toBe(0);

  const json = await hosewright(worker, ['straighten', file, '--json', ...outlets]);
  const rod = Straightened.parse(JSON.parse(json.out));
  expect(rod.cutLengthMm).toBeCloseTo(200 + 100 * Math.PI, 1);

  const along = await hosewright(worker, ['straighten', file, '--unit', 'in', '--outlet-a', '-1,0,0']);
  expect(along).toMatchObject({ code: 2, out: '', err: expect.stringContaining('outlet A: lies within 10 degrees') });
  const wrong = await hosewright(worker, ['straighten', path.join(scratch.folder, 'bad.csv'), '--outlet-a', '0,0,0']);
  expect(wrong.err).toContain('--outlet-a: expected a direction');
  const rows = await hosewright(worker, ['straighten', path.join(scratch.folder, 'bad.csv')]);
  expect(rows.err).toContain('row 2: expected three numbers');
  expect(rows.err).toContain('row 3, z: expected a number');
  const none = await hosewright(worker, ['straighten', 'nowhere.csv']);
  expect(none).toMatchObject({ code: 2, err: 'nowhere.csv: the file cannot be read\n' });
});
