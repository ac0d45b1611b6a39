import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { CommandHost } from '../../../electron/cli/commandHost.ts';
import { parsePartTables } from '../../../shared/document/parts/parsePartTables.ts';
import { partTableCsv } from '../../../shared/document/parts/partTableCsv.ts';
import { sampleEnd } from '../../arbitraries/projects.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';
import { runHere } from './runHere.ts';

const FOLDERS = { rendererFolder: '', demoProject: '', fontsFolder: '', manifestFile: '' } as CommandHost['folders'];

function hosewright(...args: string[]) {
  return runHere(FOLDERS, args);
}

const END_CSV = partTableCsv('ends', [sampleEnd({ id: 'mine', name: 'Mine' })]);

async function bay() {
  const scratch = await scratchFolder();
  await scratch.write(smallBay());
  return scratch;
}

test('lists what is in the tables, whose figures they are and what uses each part', async () => {
  await using scratch = await bay();
  const { code, out, err } = await hosewright('parts', scratch.folder);
  expect([code, err]).toEqual([0, '']);
  expect(out).toMatch(/^HOSES, \d+$/m);
  expect(out).toMatch(/^straight-6 .*-6 +flare-37 +0 +[\d.]+ +0\.0 +swivel +\w+ +\S/m);
  expect(out).toMatch(/^CLAMPS, 0: no table names any$/m);
});

test('--json prints the tables as the schema of part tables has them, of one kind where asked', async () => {
  await using scratch = await bay();
  const all = JSON.parse((await hosewright('parts', scratch.folder, '--json')).out);
  expect(Object.keys(all)).toEqual(['hoses', 'ends', 'sleeves', 'adapters', 'clamps', 'rolls']);
  const ends = JSON.parse((await hosewright('parts', scratch.folder, '--json', '--kind', 'ends')).out);
  expect(ends).toEqual({ ends: all.ends });
});

test('says every problem of the project and of its tables at once', async () => {
  await using scratch = await bay();
  const project = JSON.parse(String(smallBay()['project.json']));
  const [first = ''] = project.tables.ends;
  await scratch.write({
    'project.json': JSON.stringify({ ...project, name: '' }),
    [first]: `${END_CSV.trimEnd()}\nBad Id,x,flare-37,8\n`,
  });
  const { code, out, err } = await hosewright('parts', scratch.folder);
  expect([code, out]).toEqual([2, '']);
  expect(err).toContain('name: expected some text');
  expect(err).toContain(`${first} row 3, id: expected lower-case letters`);
  expect(err).toContain(`${first} row 3, source: missing`);
});

test('a run that names a part no table has is a problem too', async () => {
  await using scratch = await bay();
  const project = JSON.parse(String(smallBay()['project.json']));
  await scratch.write({ [project.tables.ends[0]]: END_CSV });
  const { code, err } = await hosewright('parts', scratch.folder);
  expect(code).toBe(2);
  expect(err).toMatch(/runs\[0\]\.a\.end: no end has this id/);
});

test('--check looks at one table alone', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'own.csv': END_CSV, 'bad.csv': END_CSV.replace('mine', 'Mine!').replace('aluminium', 'tin') });
  const at = (name: string) => path.join(scratch.folder, name);
  expect(await hosewright('parts', '--check', at('own.csv'), '--kind', 'ends')).toMatchObject({
    code: 0,
    out: 'own.csv: 1 end, no problem\n',
  });
  const bad = await hosewright('parts', '--check', at('bad.csv'), '--kind', 'ends');
  expect(bad.code).toBe(2);
  expect(bad.err.trimEnd().split('\n')).toEqual([
    'bad.csv row 2, id: expected lower-case letters, digits and hyphens, got "Mine!"',
    expect.stringMatching(/^bad\.csv row 2, material: expected one of "aluminium"/),
  ]);
  expect((await hosewright('parts', '--check', at('gone.csv'), '--kind', 'ends')).err).toContain('cannot be read');
  expect((await hosewright('parts', '--check', at('own.csv'), '--kind', 'hoses')).code).toBe(2);
});

test('--export writes clean tables that read back the same', async () => {
  await using scratch = await bay();
  const into = path.join(scratch.folder, 'clean');
  const { code, out } = await hosewright('parts', scratch.folder, '--export', into);
  expect(code).toBe(0);
  const names = out.trimEnd().split('\n');
  expect(names.map((name) => path.basename(name))).toEqual(['hoses.csv', 'ends.csv']);
  const text = await readFile(path.join(into, 'ends.csv'), 'utf8');
  const tables = parsePartTables([{ path: 'ends.csv', kind: 'ends', text }]);
  const listed = JSON.parse((await hosewright('parts', scratch.folder, '--json')).out);
  expect(tables.ok && tables.value.ends).toEqual(listed.ends);
});

test('--import brings rows in beside those there and saves; --replace is refused while a run uses what would go', async () => {
  await using scratch = await bay();
  await scratch.write({ 'new.csv': END_CSV });
  const before = JSON.parse((await hosewright('parts', scratch.folder, '--json')).out).ends;
  const from = ['--import', path.join(scratch.folder, 'new.csv'), '--kind', 'ends'];
  const refused = await hosewright('parts', scratch.folder, ...from, '--replace');
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('in use by');
  const done = await hosewright('parts', scratch.folder, ...from);
  expect(done.code).toBe(0);
  expect(done.out).toContain(`1 end: 1 new, 0 changed, 0 as here; ${before.length} others kept`);
  const after = JSON.parse((await hosewright('parts', scratch.folder, '--json')).out).ends;
  expect(after).toEqual([...before, sampleEnd({ id: 'mine', name: 'Mine' })]);
  const again = await hosewright('parts', scratch.folder, ...from);
  expect(again.out).toContain('0 new, 0 changed, 1 as here');
});

test('mistakes on the command line are all said', async () => {
  expect((await hosewright('parts')).err).toContain('expected a project file or its folder, or --check FILE.csv');
  const { code, err } = await hosewright('parts', 'bay', '--check', 'x.csv', '--kind', 'nuts', '--replace');
  expect(code).toBe(2);
  for (const option of ['--kind: expected one of hoses', '--check: looks at one file', '--replace: goes with'])
    expect(err).toContain(option);
  expect((await hosewright('parts', 'bay', '--import', 'x.csv')).err).toContain(
    '--kind: expected what the table holds',
  );
});

test('measure lists what to read, works C and drop out, and ends as a finding does where readings disagree', async () => {
  const listed = await hosewright('measure', 'straight');
  expect(listed.out).toMatch(/^A +seat to the tip of the tail$/m);
  // Drawn on paper: legs 20 sqrt 2 and 20 at 45 degrees, tail 22 long and 10 thick, rim 12: C 40, drop 20.
  const elbow = ['b=45', 'Ai=57.76', 'Ao=66.24', 'Hi=29.24', 'Ho=20.76', 'd=10', 'T=22'];
  const done = await hosewright('measure', 'elbow', ...elbow, 'W=15/32');
  expect(done.code).toBe(0);
  expect(done.out).toMatch(/^C +40\.0 mm \(1 9\/16 in\)$/m);
  expect(done.out).toMatch(/^drop +20\.0 mm/m);
  expect(done.out).toContain('holds: bend: the rim, from Ai, Ao, Hi and Ho 45°, as sold 45°');
  const slip = await hosewright('measure', 'elbow', ...elbow, 'W=18');
  expect([slip.code, slip.out.includes('take again: W (across the rim)')]).toEqual([1, true]);
  const json = JSON.parse((await hosewright('measure', 'elbow', ...elbow, '--json')).out);
  expect(json.end.dropMm).toBeCloseTo(20, 9);
  expect((await hosewright('measure', 'elbow', 'b=45')).out).toContain('still to be read: Ai (');
  const wrong = await hosewright('measure', 'elbow', 'b=200', 'X=3', 'd=ten');
  expect([wrong.code, wrong.err.match(/^measure elbow: /gm)?.length]).toEqual([2, 3]);
});
