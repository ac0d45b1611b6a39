import { symlink } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { readNamedFile, readProjectFiles } from '../../../electron/node/readProjectFiles.ts';
import { scratchFolder } from '../scratchFolder.ts';

const naming = (meshes: readonly string[], hoses: readonly string[] = []) =>
  JSON.stringify({ bay: { meshes: meshes.map((p) => ({ path: p })) }, tables: { hoses } });

test('reads what a project names, by its file or its folder, and nothing else', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({
    'project.json': naming(['scan/bay.stl'], ['hoses.csv']),
    'scan/bay.stl': Uint8Array.of(1, 2, 3),
    'hoses.csv': 'id\n',
    'diary.txt': 'private',
  });
  for (const given of [scratch.folder, path.join(scratch.folder, 'project.json')]) {
    const read = await readProjectFiles(given);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.files.map((f) => f.path)).toEqual(['scan/bay.stl', 'hoses.csv']);
    expect(read.value.files[0]?.bytes).toEqual(Uint8Array.of(1, 2, 3));
    expect(read.value.files[0]?.bytes.buffer.byteLength).toBe(3);
    expect(read.value.folder).toBe(scratch.folder);
  }
  expect(await readNamedFile(path.join(scratch.folder, 'project.json'), 'diary.txt')).toBeUndefined();
});

test('reports all missing files at once, with what is wrong with the text', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'project.json': naming(['a.stl', 'b.stl'], ['c.csv']), 'b.stl': 'x' });
  const read = await readProjectFiles(scratch.folder);
  expect(read.ok).toBe(false);
  const problems = read.ok ? [] : read.problems;
  expect(problems.find((p) => p.path === 'bay.meshes[0].path')).toMatchObject({ got: '"a.stl"' });
  expect(problems.find((p) => p.path === 'tables.hoses[0]')).toMatchObject({ got: '"c.csv"' });
  expect(problems.some((p) => p.path === 'bay.meshes[1].path')).toBe(false);
  expect(problems.some((p) => p.path === 'format')).toBe(true);
});

test.each(['../secret.txt', '/etc/hostname', 'scan/../../secret.txt', 'C:/secret.txt', 'scan\\..\\..\\secret.txt'])(
  'never reads %s',
  async (name) => {
    await using scratch = await scratchFolder();
    await scratch.write({ 'secret.txt': 'secret', 'bay/project.json': naming([name]), 'bay/scan/x': '' });
    const read = await readProjectFiles(path.join(scratch.folder, 'bay'));
    expect(read.ok && read.value.files).toEqual([]);
  },
);

test('a symbolic link may not lead out of the folder, but may lead within it', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({
    'secret.txt': 'secret',
    'bay/real.stl': 'mesh',
    'bay/project.json': naming(['out.stl', 'in.stl', 'folder/secret.txt']),
  });
  await symlink(path.join(scratch.folder, 'secret.txt'), path.join(scratch.folder, 'bay/out.stl'));
  await symlink(path.join(scratch.folder, 'bay/real.stl'), path.join(scratch.folder, 'bay/in.stl'));
  await symlink(scratch.folder, path.join(scratch.folder, 'bay/folder'));
  const read = await readProjectFiles(path.join(scratch.folder, 'bay'));
  const refused = read.ok ? [] : read.problems.filter((p) => p.path.startsWith('bay.meshes'));
  expect(refused.filter((p) => p.message.includes("below the project's folder")).map((p) => p.path)).toEqual([
    'bay.meshes[0].path',
    'bay.meshes[2].path',
  ]);
});

test('says so when there is no project', async () => {
  await using scratch = await scratchFolder();
  for (const given of [scratch.folder, path.join(scratch.folder, 'none.json')]) {
    const read = await readProjectFiles(given);
    expect(read).toMatchObject({
      ok: false,
      problems: [{ path: given, message: expect.stringContaining('not found') }],
    });
  }
});
