import { readFile } from 'node:fs/promises';
import { request } from 'node:http';
import path from 'node:path';
import { expect, test } from 'vitest';
import { type ServedWindow, serveWindow } from '../../../electron/node/serveWindow.ts';
import { KEY_HEADER } from '../../../shared/desktop/http.ts';
import { type ScratchFolder, scratchFolder } from '../scratchFolder.ts';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Asks with the path exactly as written; `fetch` would tidy `..` away and set Host itself. */
function ask(
  served: ServedWindow,
  rawPath: string,
  { method = 'GET', body = '', ...headers }: Record<string, string> = {},
): Promise<Answer> {
  const { port } = new URL(served.address);
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path: rawPath, method, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(chunks).toString('utf8'),
        }),
      );
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

const projectText = JSON.stringify({ bay: { meshes: [{ path: 'scan/my bay.stl' }] }, tables: {} });

async function withServer(
  use: (served: ServedWindow, key: Record<string, string>, scratch: ScratchFolder) => Promise<void>,
): Promise<void> {
  await using scratch = await scratchFolder();
  await scratch.write({
    'window/index.html': '<!doctype html>',
    'window/assets/a.js': 'export {}',
    'secret.txt': 'secret',
    'bay/project.json': projectText,
    'bay/scan/my bay.stl': 'mesh',
    'bay/diary.txt': 'private',
    'demo/project.json': JSON.stringify({ bay: { meshes: [{ path: 'gone.stl' }] } }),
  });
  const served = await serveWindow({
    rendererFolder: path.join(scratch.folder, 'window'),
    demoProject: path.join(scratch.folder, 'demo'),
    given: { place: path.join(scratch.folder, 'bay'), savesInPlace: true },
    port: 0,
  });
  try {
    const key = new URL(served.address).hash.replace('#key=', '');
    await use(served, { [KEY_HEADER]: key }, scratch);
  } finally {
    await served.close();
  }
}

test('the window comes with its policy, isolated and on this machine only', () =>
  withServer(async (served) => {
    expect(new URL(served.address).hostname).toBe('127.0.0.1');
    for (const [asked, type] of [
      ['/', 'text/html; charset=utf-8'],
      ['/assets/a.js', 'text/javascript; charset=utf-8'],
    ] as const) {
      const answer = await ask(served, asked);
      expect(answer.status).toBe(200);
      expect(answer.headers).toMatchObject({
        'content-type': type,
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-embedder-policy': 'require-corp',
        'x-content-type-options': 'nosniff',
      });
      const policy = String(answer.headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toMatch(/script-src 'self' 'wasm-unsafe-eval';/);
      expect(policy).not.toContain("'unsafe-eval'");
    }
  }));

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/assets/..%5c..%5csecret.txt',
  '/%00',
  '/%',
  '//etc/passwd',
])('nothing outside the window is served: %s', (asked) =>
  withServer(async (served) => {
    const answer = await ask(served, asked);
    expect(answer.status).toBe(403);
    expect(answer.body).not.toContain('secret');
  }),
);

test('a page of another site is turned away by its host and its origin', () =>
  withServer(async (served, key) => {
    const { host } = new URL(served.address);
    expect((await ask(served, '/', { host: 'evil.example' })).status).toBe(403);
    expect((await ask(served, '/project/given', { ...key, origin: 'http://evil.example' })).status).toBe(403);
    expect((await ask(served, '/project/given', { ...key, origin: `http://${host}` })).status).toBe(200);
  }));

test('a project needs the key to be read and to be saved', () =>
  withServer(async (served, key, scratch) => {
    expect((await ask(served, '/project/given')).status).toBe(403);
    expect((await ask(served, '/project/given', { [KEY_HEADER]: '0'.repeat(48) })).status).toBe(403);
    expect((await ask(served, '/project/given', { method: 'PUT', body: '{}' })).status).toBe(403);
    expect(await readFile(path.join(scratch.folder, 'bay/project.json'), 'utf8')).toBe(projectText);
    expect((await ask(served, '/project/given', key)).status).toBe(200);
  }));

test('only the files that the project names are served', () =>
  withServer(async (served, key) => {
    const listed = JSON.parse((await ask(served, '/project/given', key)).body);
    expect(listed.value).toEqual({ label: 'bay', savesInPlace: true, projectText, paths: ['scan/my bay.stl'] });
    expect((await ask(served, '/project/given/files/scan/my%20bay.stl', key)).body).toBe('mesh');
    for (const other of ['diary.txt', 'project.json', '../secret.txt', '..%2fsecret.txt', '%']) {
      expect((await ask(served, `/project/given/files/${other}`, key)).status).toBe(404);
    }
    expect((await ask(served, '/project/other', key)).status).toBe(404);
  }));

test('what is wrong with a project comes as problems', () =>
  withServer(async (served, key) => {
    const answer = await ask(served, '/project/demo', key);
    expect(answer.status).toBe(422);
    expect(JSON.parse(answer.body).problems).toContainEqual({
      path: 'bay.meshes[0].path',
      message: 'expected a file that can be read (not found)',
      got: '"gone.stl"',
    });
  }));

test('saving writes the given project and never the demonstration', () =>
  withServer(async (served, key, scratch) => {
    const put = (where: string, body: string) => ask(served, where, { method: 'PUT', body, ...key });
    expect((await put('/project/given/added/new/b.stl', 'second')).status).toBe(200);
    expect((await put('/project/given/added/diary.txt', 'gone')).status).toBe(422);
    expect((await put('/project/given/added/..%2fout.stl', 'out')).status).toBe(422);
    expect((await put('/project/given', '{"name":"å"}')).status).toBe(200);
    expect(await readFile(path.join(scratch.folder, 'bay/project.json'), 'utf8')).toBe('{"name":"å"}');
    expect(await readFile(path.join(scratch.folder, 'bay/new/b.stl'), 'utf8')).toBe('second');
    expect(await readFile(path.join(scratch.folder, 'bay/diary.txt'), 'utf8')).toBe('private');
    expect((await put('/project/given/added/parts/own-ends.csv', 'id')).status).toBe(200);
    expect((await put('/project/given/tables/parts/own-ends.csv', 'id,name')).status).toBe(200);
    expect(await readFile(path.join(scratch.folder, 'bay/parts/own-ends.csv'), 'utf8')).toBe('id,name');
    for (const other of ['diary.txt', 'project.json', 'parts/gone.csv', '..%2fsecret.csv'])
      expect((await put(`/project/given/tables/${other}`, 'lost')).status).toBe(422);
    expect((await put('/project/demo/tables/parts/own-ends.csv', '')).status).toBe(405);
    expect((await put('/project/demo', '{}')).status).toBe(405);
    expect((await ask(served, '/index.html', { method: 'POST' })).status).toBe(405);
  }));

test('started on nothing it has nothing to open, and started on the example it saves nothing', async () => {
  await using scratch = await scratchFolder();
  await scratch.write({ 'bay/project.json': '{}' });
  const example = path.join(scratch.folder, 'bay');
  for (const given of [undefined, { place: example, savesInPlace: false }]) {
    const served = await serveWindow({
      rendererFolder: scratch.folder,
      demoProject: example,
      port: 0,
      ...(given && { given }),
    });
    const key = { [KEY_HEADER]: new URL(served.address).hash.replace('#key=', '') };
    const opened = await ask(served, '/project/given', key);
    expect(opened.status).toBe(given === undefined ? 204 : 200);
    if (given) expect(JSON.parse(opened.body).value).toMatchObject({ label: 'bay', savesInPlace: false });
    const put = await ask(served, '/project/given', { method: 'PUT', body: '{"lost":1}', ...key });
    expect(put.status).toBe(given === undefined ? 204 : 405);
    await served.close();
  }
  expect(await readFile(path.join(example, 'project.json'), 'utf8')).toBe('{}');
});
