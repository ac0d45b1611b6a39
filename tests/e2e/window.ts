import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';
import { test as base, expect, type Page } from '@playwright/test';

const root = path.resolve(import.meta.dirname, '../..');

export interface OpenedWindow {
  readonly page: Page;
  /** What the page threw, logged as an error, or asked of a place that is not this machine. */
  readonly faults: string[];
}

/** Serves the built window as `npm start` does and answers its address once the server has said it. */
async function serve(project: string | undefined): Promise<{ address: string; server: ChildProcess }> {
  const program = path.join(root, '.build/cli/hosewright.js');
  const args = [program, 'serve', ...(project === undefined ? [] : [project])];
  const server = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  return new Promise((resolve, reject) => {
    server.on('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
    server.stdout.on('data', (chunk) => {
      said += chunk;
      const address = /http:\S+/.exec(said)?.[0];
      if (address !== undefined) resolve({ address, server });
    });
  });
}

export interface WindowFixtures {
  /** The project the window is started on; undefined = none. */
  readonly project: string | undefined;
  readonly opened: OpenedWindow;
}

/** Opens the built window in a page, as `npm start` would; `close` ends its server and fails when the page had any fault. */
export async function openWindow(page: Page, project: string | undefined): Promise<OpenedWindow & { close(): void }> {
  const { address, server } = await serve(project);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`thrown: ${error.stack ?? error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`logged: ${message.text()}`);
  });
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (hostname !== '127.0.0.1' && !['blob:', 'data:'].includes(protocol)) faults.push(`asked: ${request.url()}`);
  });
  // Playwright takes file dialogs over only while somebody listens for one, and begins to a little later than it is asked to:
  // a dialog that opens sooner is the browser's own, which shows none here. So there is a listener all along.
  page.on('filechooser', () => undefined);
  await page.goto(address);
  const close = (): void => {
    server.removeAllListeners('exit');
    server.kill('SIGINT');
    expect(faults).toEqual([]);
  };
  return { page, faults, close };
}

/**
 * A test that is given the built window, running in Chromium; it fails when the page had any fault. Where a window is opened on a
 * project, that is there before the test begins: its coming chooses the step.
 */
export const test = base.extend<WindowFixtures>({
  project: [undefined, { option: true }],
  opened: async ({ page, project }, use) => {
    const opened = await openWindow(page, project);
    if (project !== undefined) await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Hosewright');
    await use(opened);
    opened.close();
  },
});

export { expect } from '@playwright/test';
