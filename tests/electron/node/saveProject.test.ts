import { chmod, mkdir, readdir, readFile, symlink } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { atomicWrite } from '../../../electron/node/atomicWrite.ts';
import { saveProject, saveProjectCopy } from '../../../electron/node/saveProject.ts';
import { writeFilesInto } from '../../../electron/node/writeFilesInto.ts';
import { scratchFolder } from '../scratchFolder.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

test('atomicWrite replaces the whole file and leaves nothing beside it', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'project.json': 'a much longer text than the new one' });
  await atomicWrite(path.join(scratch.folder, 'project.json'), 'new');
  expect(await readFile(path.join(scratch.folder, 'project.json'), 'utf8')).toBe('new');
  expect(await readdir(scratch.folder)).toEqual(['project.json']);
});

test('when the rename cannot be done the old thing stands and the temporary file is gone', async () => {
  await using scratch = await scratchFolder();
  await mkdir(path.join(scratch.folder, 'project.json/inside'), { recursive: true });
  await expect(atomicWrite(path.join(scratch.folder, 'project.json'), 'new')).rejects.toThrow();
  expect(await readdir(scratch.folder)).toEqual(['project.json']);
});

test('a reader during many saves sees one whole text or another', async () => {
  await using scratch = await scratchFolder();
  const file = path.join(scratch.folder, 'project.json');
  const texts = Array.from({ length: 20 }, (_, i) => String(i % 10).repeat(50_000 + i));
  await atomicWrite(file, texts[0] ?? '');
  let saving = true;
  const reader = (async () => {
    while (saving) expect(texts).toContain(await readFile(file, 'utf8'));
  })();
  for (const text of texts) await atomicWrite(file, text);
  saving = false;
  await reader;
});

test('added files are laid below the folder; one that stands there stops the whole save', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'project.json': 'old', 'taken.stl': 'kept' });
  const file = path.join(scratch.folder, 'project.json');
  expect((await saveProject(file, 'new', [{ path: 'scan/bay.stl', bytes: bytes('mesh') }])).ok).toBe(true);
  expect(await readFile(path.join(scratch.folder, 'scan/bay.stl'), 'utf8')).toBe('mesh');
  const refused = await saveProject(file, 'newer', [
    { path: 'taken.stl', bytes: bytes('lost') },
    { path: '../out.stl', bytes: bytes('out') },
    { path: 'fine.stl', bytes: bytes('fine') },
  ]);
  expect(refused.ok ? [] : refused.problems.map((p) => p.path)).toEqual(['taken.stl', '../out.stl']);
  expect(await readFile(path.join(scratch.folder, 'taken.stl'), 'utf8')).toBe('kept');
  expect(await readFile(file, 'utf8')).toBe('new');
  expect((await readdir(scratch.folder)).sort()).toEqual(['project.json', 'scan', 'taken.stl']);
});

test('an added file does not follow a link out of the folder', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'bay/project.json': 'old', 'elsewhere/x': '' });
  await symlink(path.join(scratch.folder, 'elsewhere'), path.join(scratch.folder, 'bay/link'));
  const file = path.join(scratch.folder, 'bay/project.json');
  expect((await saveProject(file, 'new', [{ path: 'link/deep/bay.stl', bytes: bytes('x') }])).ok).toBe(false);
  expect(await readdir(path.join(scratch.folder, 'elsewhere'))).toEqual(['x']);
});

test('part tables are written over those that stand there; anything else stops the whole save', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({
    'bay/project.json': 'old',
    'bay/parts/ends.csv': 'a',
    'bay/bay.stl': 'mesh',
    'else/x.csv': 'x',
  });
  await symlink(path.join(scratch.folder, 'else'), path.join(scratch.folder, 'bay/link'));
  const file = path.join(scratch.folder, 'bay/project.json');
  const at = (name: string) => readFile(path.join(scratch.folder, 'bay', name), 'utf8');
  const added = [{ path: 'parts/own-clamps.csv', bytes: bytes('c') }];
  expect((await saveProject(file, 'new', added, [{ path: 'parts/ends.csv', bytes: bytes('b') }])).ok).toBe(true);
  expect([await at('project.json'), await at('parts/ends.csv'), await at('parts/own-clamps.csv')]).toEqual([
    'new',
    'b',
    'c',
  ]);
  const refused = await saveProject(
    file,
    'newer',
    [{ path: 'parts/more.csv', bytes: bytes('m') }],
    ['bay.stl', 'parts/gone.csv', 'link/x.csv', '../else/x.csv', 'parts/ends.csv'].map((name) => ({
      path: name,
      bytes: bytes('lost'),
    })),
  );
  expect(refused.ok ? [] : refused.problems.map((p) => p.path)).toEqual([
    'bay.stl',
    'parts/gone.csv',
    'link/x.csv',
    '../else/x.csv',
  ]);
  expect([await at('project.json'), await at('parts/ends.csv'), await at('bay.stl'), await at('link/x.csv')]).toEqual([
    'new',
    'b',
    'mesh',
    'x',
  ]);
  expect((await readdir(path.join(scratch.folder, 'bay/parts'))).sort()).toEqual(['ends.csv', 'own-clamps.csv']);
});

test('a copy takes the files its text names, and no folder that holds a project', async () => {
  await using scratch = await scratchFolder();
  const text = JSON.stringify({ bay: { meshes: [{ path: 'm/bay.stl' }] } });
  const files = [
    { path: 'm/bay.stl', bytes: bytes('mesh') },
    { path: 'old.stl', bytes: bytes('no longer named') },
  ];
  expect((await saveProjectCopy(scratch.folder, text, files)).ok).toBe(true);
  expect((await readdir(scratch.folder)).sort()).toEqual(['m', 'project.json']);
  expect((await saveProjectCopy(scratch.folder, text, files)).ok).toBe(false);
});

test('papers go into the folder asked for and nowhere else', async () => {
  await using scratch = await scratchFolder();
  const folder = path.join(scratch.folder, 'papers');
  expect(await writeFilesInto(folder, [{ path: 'feed/sheet.pdf', bytes: bytes('%PDF') }])).toEqual({
    ok: true,
    value: ['feed/sheet.pdf'],
  });
  expect((await writeFilesInto(folder, [{ path: '../x.pdf', bytes: bytes('') }])).ok).toBe(false);
  expect(await readdir(scratch.folder)).toEqual(['papers']);
});

test.skipIf(process.getuid?.() === 0)(
  'a folder that may not be written is a value (skipped: root may write anywhere)',
  async () => {
    await using scratch = await scratchFolder();
    await scratch.write({ 'project.json': 'old' });
    await chmod(scratch.folder, 0o500);
    expect((await saveProject(path.join(scratch.folder, 'project.json'), 'new', [])).ok).toBe(false);
    await chmod(scratch.folder, 0o700);
  },
);
