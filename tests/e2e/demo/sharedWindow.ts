import type { Page } from '@playwright/test';
import { openWindow, test } from '../window.ts';

/** The window that the tests of a file go on in, one after the other: what one of them laid, the next one finds. */
export type SharedPage = () => Page;

/** ms. Opening the example and making its window ready, on a machine of any speed. */
const OPENING_LIMIT_MS = 120_000;

/** One window for all tests of the file, which then run in their order and stop at the first that fails. */
export function sharedWindow(project: () => Promise<string>): SharedPage {
  test.describe.configure({ mode: 'serial' });
  let opened: Awaited<ReturnType<typeof openWindow>> | undefined;
  test.beforeAll(async ({ browser }) => {
    test.setTimeout(OPENING_LIMIT_MS);
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      acceptDownloads: true,
      reducedMotion: 'reduce',
    });
    opened = await openWindow(await context.newPage(), await project());
  });
  test.afterAll(async () => {
    await opened?.page.context().close();
    opened?.close();
  });
  return () => {
    if (opened === undefined) throw new Error('sharedWindow: asked for before it was opened');
    return opened.page;
  };
}
