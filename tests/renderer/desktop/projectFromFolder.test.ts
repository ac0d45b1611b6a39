import { expect, test } from 'vitest';
import { type PickedFile, projectFromFolder } from '../../../renderer/desktop/projectFromFolder.ts';

function picked(webkitRelativePath: string, content: string): PickedFile {
  const file = new File([content], webkitRelativePath.split('/').at(-1) ?? '');
  return { name: file.name, webkitRelativePath, text: () => file.text(), arrayBuffer: () => file.arrayBuffer() };
}

const projectText = JSON.stringify({ bay: { meshes: [{ path: 'scan/bay.stl' }] }, tables: { hoses: ['hoses.csv'] } });

test('takes the project of the folder itself and the files it names', async () => {
  const opened = await projectFromFolder([
    picked('rally/older/project.json', '{}'),
    picked('rally/scan/bay.stl', 'mesh'),
    picked('rally/project.json', projectText),
    picked('rally/hoses.csv', 'id'),
    picked('rally/diary.txt', 'private'),
  ]);
  if (!opened.ok) throw new Error('expected a project');
  expect(opened.value).toMatchObject({ label: 'rally', savesInPlace: false, projectText });
  expect(opened.value.files.map((f) => [f.path, new TextDecoder().decode(f.bytes)])).toEqual([
    ['scan/bay.stl', 'mesh'],
    ['hoses.csv', 'id'],
  ]);
});

test('reports all that is missing', async () => {
  const none = await projectFromFolder([picked('rally/diary.txt', '')]);
  expect(none).toMatchObject({ ok: false, problems: [{ path: 'project.json' }] });
  const bare = await projectFromFolder([picked('rally/project.json', projectText)]);
  expect(bare.ok ? [] : bare.problems.map((p) => p.path)).toEqual(['bay.meshes[0].path', 'tables.hoses[0]']);
});
