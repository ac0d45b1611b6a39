import { readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { recentProjects } from '../../../electron/node/recentProjects.ts';
import { scratchFolder } from '../scratchFolder.ts';

test('projects are remembered last first, each once, with their folder and day, from one sitting to the next', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'bay/project.json': '{}', 'boat/project.json': '{}' });
  const keptIn = path.join(scratch.folder, 'user', 'recent.json');
  const fileOf = (name: string): string => path.join(scratch.folder, name, 'project.json');
  const recent = recentProjects(keptIn, () => '2026-05-12');
  expect(await recent.list()).toEqual([]);
  await Promise.all([recent.remember(fileOf('bay')), recent.remember(fileOf('boat'))]);
  await recent.remember(fileOf('bay'));
  const listed = await recentProjects(keptIn, () => '2026-06-01').list();
  expect(listed.map(({ label }) => label)).toEqual(['bay', 'boat']);
  expect(listed[0]).toMatchObject({ where: path.join(scratch.folder, 'bay'), openedOn: '2026-05-12', missing: false });
  expect(JSON.stringify(listed.map(({ id }) => id))).not.toContain('bay');
  expect(await recent.fileOf(listed[1]?.id ?? '')).toBe(fileOf('boat'));
});

test('one that is gone says so and can be taken off; its neighbour stays', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'bay/project.json': '{}', 'boat/project.json': '{}' });
  const recent = recentProjects(path.join(scratch.folder, 'recent.json'), () => '2026-05-12');
  await recent.remember(path.join(scratch.folder, 'bay', 'project.json'));
  await recent.remember(path.join(scratch.folder, 'boat', 'project.json'));
  await rm(path.join(scratch.folder, 'bay'), { recursive: true });
  const [boat, bay] = await recent.list();
  expect([boat?.missing, bay?.missing]).toEqual([false, true]);
  expect((await recent.forget(bay?.id ?? '')).map(({ label }) => label)).toEqual(['boat']);
  expect(await recent.fileOf(bay?.id ?? '')).toBeUndefined();
});

test('no more than twelve are kept', async () => {
  await using scratch = await scratchFolder();
  const recent = recentProjects(path.join(scratch.folder, 'recent.json'), () => '2026-05-12');
  for (let i = 0; i < 15; i++) await recent.remember(path.join(scratch.folder, `bay-${i}`, 'project.json'));
  expect((await recent.list()).map(({ label }) => label)[0]).toBe('bay-14');
  expect(await recent.list()).toHaveLength(12);
});

test('a list that another hand spoilt counts as empty and is written anew; one that cannot be written stops nothing', async () => {
  await using scratch = await scratchFolder();
  const keptIn = path.join(scratch.folder, 'recent.json');
  for (const text of ['{', '7', '{"projects":[{"file":"not/absolute","openedOn":"2026-01-01"},null]}']) {
    await writeFile(keptIn, text);
    const recent = recentProjects(keptIn, () => '2026-05-12');
    expect(await recent.list()).toEqual([]);
    await recent.remember(path.join(scratch.folder, 'project.json'));
    expect(JSON.parse(await readFile(keptIn, 'utf8')).projects).toHaveLength(1);
  }
  await writeFile(path.join(scratch.folder, 'file'), '');
  const nowhere = recentProjects(path.join(scratch.folder, 'file', 'recent.json'), () => '2026-05-12');
  await nowhere.remember(path.join(scratch.folder, 'project.json'));
  expect(await nowhere.list()).toEqual([]);
});
