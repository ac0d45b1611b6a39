import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { answerAsset } from '../../../electron/main/answerAsset.ts';
import { givenProject } from '../../../electron/main/givenProject.ts';
import { TASK_CHANNELS } from '../../../shared/desktop/channels.ts';
import type { DesktopApi, MenuCommand } from '../../../shared/desktop/contract.ts';
import { scratchFolder } from '../scratchFolder.ts';
import * as fake from './fakeElectron.ts';

vi.mock('electron', () => import('./fakeElectron.ts'));

let api: DesktopApi;
beforeAll(async () => {
  await import('../../../electron/main/index.ts');
  await import('../../../electron/preload/index.ts');
  await vi.waitFor(() => expect(fake.windows[0]?.shown).toBe(true));
  api = fake.exposed['hosewrightDesktop'] as DesktopApi;
});
beforeEach(() => Object.assign(fake.answers, { open: [], save: '' }));

describe('the window', () => {
  test('is sandboxed, isolated and has no Node', () => {
    expect(fake.windows).toHaveLength(1);
    expect(fake.windows[0]?.options.webPreferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      devTools: false,
    });
    expect(fake.windows[0]?.address).toBe('app://hosewright/index.html');
  });

  test('sandbox and scheme are said before the program is ready', () => {
    const ready = fake.calls.indexOf('ready');
    for (const before of ['enableSandbox', 'registerSchemesAsPrivileged', 'requestSingleInstanceLock']) {
      expect(fake.calls.indexOf(before)).toBeGreaterThanOrEqual(0);
      expect(fake.calls.indexOf(before)).toBeLessThan(ready);
    }
    expect(fake.schemes).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  test.each([
    ['https://example.org/', true],
    ['file:///etc/passwd', true],
    ['app://elsewhere/index.html', true],
    ['javascript:alert(1)', true],
    ['not an address', true],
    ['app://hosewright/index.html', false],
  ])('going to %s is stopped: %s', (url, stopped) => {
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      const preventDefault = vi.fn();
      fake.windows[0]?.webContents.emit(name, { preventDefault, url }, url);
      expect(preventDefault).toHaveBeenCalledTimes(stopped ? 1 : 0);
    }
  });

  test.each([
    ['Stay', 0, 0],
    ['Close without saving', 1, 1],
  ])('held back by changes that are not saved: %s', (_words, button, letGo) => {
    fake.answers.button = button;
    const preventDefault = vi.fn();
    fake.windows[0]?.webContents.emit('will-prevent-unload', { preventDefault });
    expect(preventDefault).toHaveBeenCalledTimes(letGo);
  });

  test('no second window, no embedded view, no permission', () => {
    const contents = fake.windows[0]?.webContents;
    expect(contents?.openHandler?.()).toEqual({ action: 'deny' });
    const preventDefault = vi.fn();
    contents?.emit('will-attach-webview', { preventDefault });
    expect(preventDefault).toHaveBeenCalled();
    const answer = vi.fn();
    (fake.permissions['request'] as (...args: unknown[]) => void)(null, 'media', answer);
    expect(answer).toHaveBeenCalledWith(false);
    expect(fake.permissions['check']?.()).toBe(false);
    expect(fake.permissions['device']?.()).toBe(false);
  });
});

describe('tasks', () => {
  test('every task is answered, and the page gets neither channel nor event', async () => {
    expect([...fake.handlers.keys()].sort()).toEqual(Object.values(TASK_CHANNELS).sort());
    expect(Object.keys(api).sort()).toEqual([...Object.keys(TASK_CHANNELS), 'onMenu'].sort());
  });

  test.each([
    null,
    { url: 'https://example.org/', parent: null },
    { url: 'app://elsewhere/index.html', parent: null },
    { url: 'app://hosewright.example/index.html', parent: null },
    { url: 'app://hosewright/index.html', parent: fake.ownFrame },
  ])('a stranger is refused: %o', async (frame) => {
    for (const channel of Object.values(TASK_CHANNELS)) {
      await expect(fake.asked(frame, channel)).rejects.toThrow('not the window');
    }
  });

  test('what does not fit is refused before any dialog', async () => {
    fake.answers.open = ['/nowhere'];
    fake.answers.save = '/nowhere/x';
    const refused = (task: keyof typeof TASK_CHANNELS, ...args: unknown[]) =>
      expect(fake.asked(fake.ownFrame, TASK_CHANNELS[task], ...args)).rejects.toThrow(TypeError);
    await refused('saveProject', 42);
    await refused('saveProject', '{}', [{ path: '../x', bytes: new Uint8Array() }]);
    await refused('saveProject', '{}', [{ path: 'x', bytes: 'text' }]);
    await refused('saveProject', '{}', [], [{ path: '../x.csv', bytes: new Uint8Array() }]);
    await refused('saveFile', '../sheet.pdf', new Uint8Array());
    await refused('saveFile', 'sheet.pdf', 'text');
    await refused('saveFiles', [null]);
    await refused('saveFiles', 'all');
    await refused('openRecent', 42);
    await refused('forgetRecent');
  });

  test('a project is chosen, saved in place and read back', async () => {
    await using scratch = await scratchFolder();
    const text = JSON.stringify({ bay: { meshes: [{ path: 'bay.stl' }] } });
    await scratch.write({ 'project.json': text, 'bay.stl': Uint8Array.of(7) });
    expect(await api.chooseProject()).toBeNull();
    fake.answers.open = [path.join(scratch.folder, 'project.json')];
    expect(await api.chooseProject()).toEqual({
      ok: true,
      value: {
        label: path.basename(scratch.folder),
        savesInPlace: true,
        projectText: text,
        files: [{ path: 'bay.stl', bytes: Uint8Array.of(7) }],
      },
    });
    await api.taken();
    // Another one that the window finds it cannot read is never taken, so what is saved stays this one.
    await using other = await scratchFolder();
    await other.write({ 'project.json': '{}' });
    fake.answers.open = [path.join(other.folder, 'project.json')];
    expect(await api.chooseProject()).toMatchObject({ ok: true });
    const added = [{ path: 'more.stl', bytes: Uint8Array.of(8) }];
    expect(await api.saveProject('{"changed":true}', added)).toMatchObject({ ok: true, value: { kind: 'saved' } });
    expect(await readFile(path.join(scratch.folder, 'project.json'), 'utf8')).toBe('{"changed":true}');
    expect(await readFile(path.join(other.folder, 'project.json'), 'utf8')).toBe('{}');
    expect([...(await readFile(path.join(scratch.folder, 'more.stl')))]).toEqual([8]);
    const table = (content: number) => [{ path: 'own-ends.csv', bytes: Uint8Array.of(content) }];
    expect(await api.saveProject('{}', [], table(1))).toMatchObject({
      ok: false,
      problems: [{ path: 'own-ends.csv' }],
    });
    expect(await api.saveProject('{}', table(1))).toMatchObject({ ok: true });
    expect(await api.saveProject('{}', [], table(2))).toMatchObject({ ok: true });
    expect([...(await readFile(path.join(scratch.folder, 'own-ends.csv')))]).toEqual([2]);
  });

  test('a project that was opened is remembered and opened again by its name on the list alone', async () => {
    await using scratch = await scratchFolder();
    await scratch.write({ 'project.json': JSON.stringify({ bay: { meshes: [] } }) });
    fake.answers.open = [path.join(scratch.folder, 'project.json')];
    expect(await api.chooseProject()).toMatchObject({ ok: true });
    await api.taken();
    const one = (await api.recentProjects()).find(({ label }) => label === path.basename(scratch.folder));
    expect(one).toMatchObject({ missing: false, openedOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) });
    expect(await api.openRecent(one?.id ?? '')).toMatchObject({ ok: true, value: { savesInPlace: true } });
    expect(await api.openRecent(path.join(scratch.folder, 'project.json'))).toMatchObject({ ok: false });
    expect((await api.forgetRecent(one?.id ?? '')).some(({ id }) => id === one?.id)).toBe(false);
    expect(await api.openRecent(one?.id ?? '')).toMatchObject({ ok: false });
  });

  test('papers and picked files go through dialogs; closing one saves nothing', async () => {
    await using scratch = await scratchFolder();
    const sheet = { path: 'sheet.pdf', bytes: Uint8Array.of(1, 2) };
    expect(await api.saveFile('sheet.pdf', sheet.bytes)).toEqual({ ok: true, value: { kind: 'not-saved' } });
    expect(await api.saveFiles([sheet])).toEqual({ ok: true, value: { kind: 'not-saved' } });
    fake.answers.save = path.join(scratch.folder, 'one.pdf');
    expect(await api.saveFile('sheet.pdf', sheet.bytes)).toMatchObject({ ok: true, value: { kind: 'saved' } });
    await mkdir(path.join(scratch.folder, 'papers'));
    fake.answers.open = [path.join(scratch.folder, 'papers')];
    expect(await api.saveFiles([sheet])).toMatchObject({ ok: true, value: { kind: 'saved' } });
    fake.answers.open = [path.join(scratch.folder, 'papers/sheet.pdf'), path.join(scratch.folder, 'gone.csv')];
    expect(await api.chooseFiles()).toMatchObject({ ok: false, problems: [{ path: fake.answers.open[1] }] });
    fake.answers.open = [path.join(scratch.folder, 'papers/sheet.pdf')];
    expect(await api.chooseFiles()).toEqual({ ok: true, value: [sheet] });
  });

  test('menu commands reach the page, others do not', () => {
    const heard: MenuCommand[] = [];
    const stop = api.onMenu((command) => void heard.push(command));
    const items = fake.menus.flat().flatMap((menu) => menu.submenu ?? []);
    for (const item of items) item.click?.();
    for (const [channel, ...args] of fake.windows[0]?.webContents.sent ?? []) {
      fake.ipcRenderer.emit(String(channel), {}, ...args);
    }
    fake.ipcRenderer.emit('hosewright:menu', {}, 'format-disk');
    expect(heard).toEqual(['open-project', 'open-demo', 'save-project', 'undo', 'redo']);
    stop();
    fake.ipcRenderer.emit('hosewright:menu', {}, 'undo');
    expect(heard).toHaveLength(5);
    expect(items.some((item) => item.role === 'toggleDevTools')).toBe(false);
  });
});

describe("the window's own scheme", () => {
  test.each([
    ['app://hosewright/index.html', 200],
    ['app://hosewright/', 200],
    ['app://hosewright/none.js', 404],
    ['app://elsewhere/index.html', 403],
    ['app://hosewright/%2e%2e%2fsecret.txt', 403],
    ['app://hosewright/..%5csecret.txt', 403],
    ['https://hosewright/index.html', 403],
  ])('%s answers %i', async (address, status) => {
    await using scratch = await scratchFolder();
    await scratch.write({ 'window/index.html': '<!doctype html>', 'secret.txt': 'secret' });
    const answer = await answerAsset(path.join(scratch.folder, 'window'), address);
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(await answer.text()).not.toContain('secret');
  });
});

test('the project on the command line', () => {
  const given = (argv: string[], packaged: boolean) => givenProject(argv, packaged, 'the example');
  const bay = { place: 'bay', savesInPlace: true };
  expect(given(['/opt/hosewright'], true)).toBeUndefined();
  expect(given(['/opt/hosewright', '--no-first-run', 'bay'], true)).toEqual(bay);
  expect(given(['electron', '/checkout', 'bay'], false)).toEqual(bay);
  expect(given(['electron', '/checkout'], false)).toBeUndefined();
  expect(given(['electron', '/checkout', '--example'], false)).toEqual({ place: 'the example', savesInPlace: false });
});
