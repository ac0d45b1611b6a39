import { expect, test } from 'vitest';
import { isContainedPath, namedPaths } from '../../../../shared/document/project/namedPaths.ts';
import { Project } from '../../../../shared/document/project/schema.ts';

test.each([
  ['bay.stl', true],
  ['scan/my bay.stl', true],
  ['scan/..hidden', true],
  ['', false],
  ['/bay.stl', false],
  ['../bay.stl', false],
  ['scan/../bay.stl', false],
  ['./bay.stl', false],
  ['scan//bay.stl', false],
  ['scan/', false],
  ['scan\\bay.stl', false],
  ['C:bay.stl', false],
  ['c:/bay.stl', false],
  ['bay\u0000.stl', false],
])('%j stays below its folder: %s', (path, contained) => {
  expect(isContainedPath(path)).toBe(contained);
});

test('lists each file once, with the place that names it first', () => {
  const text = JSON.stringify({
    bay: { meshes: [{ path: 'a.stl' }, { path: 'b.glb' }, { path: 'a.stl' }] },
    tables: { hoses: ['parts.csv'], ends: ['ends.csv', 'parts.csv'], sleeves: ['../out.csv', 7] },
  });
  expect(namedPaths(text)).toEqual([
    { where: 'bay.meshes[0].path', path: 'a.stl' },
    { where: 'bay.meshes[1].path', path: 'b.glb' },
    { where: 'tables.hoses[0]', path: 'parts.csv' },
    { where: 'tables.ends[0]', path: 'ends.csv' },
  ]);
});

test.each(['', 'not json', 'null', '[]', '{"bay":[]}', '{"bay":{"meshes":{"path":"x"}}}', '{"tables":null}'])(
  'a text that is no project names nothing: %j',
  (text) => expect(namedPaths(text)).toEqual([]),
);

test('every kind of file that the project format has is listed', () => {
  const sha256 = '0'.repeat(64);
  const mesh = { path: 'bay.stl', sha256, unit: 'mm', upAxis: '+z' };
  const tables = Object.fromEntries(Object.keys(Project.shape.tables.shape).map((kind) => [kind, [`${kind}.csv`]]));
  const text = `\uFEFF${JSON.stringify({ bay: { meshes: [mesh] }, tables })}`;
  expect(namedPaths(text)).toHaveLength(1 + Object.keys(tables).length);
});
