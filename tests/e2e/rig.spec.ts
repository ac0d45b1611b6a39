import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { smallBay } from '../electron/smallBay.ts';
import { expect, test } from './window.ts';

const rig = test.extend({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the pattern to learn that nothing is needed
  project: async ({}, use) => {
    const folder = await mkdtemp(path.join(tmpdir(), 'hosewright-rig-'));
    for (const [name, content] of Object.entries(smallBay())) await writeFile(path.join(folder, name), content);
    await use(folder);
  },
});

rig('a rig is opened, laid in the worker and printed', async ({ opened: { page } }) => {
  expect(await page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
  await expect(page.locator('canvas').first()).toBeVisible();
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  await page.getByRole('button', { name: 'Papers' }).click();
  const button = page.getByRole('button', { name: 'Download build sheets' });
  await expect(button).toBeEnabled({ timeout: 150_000 });
  const downloading = page.waitForEvent('download');
  await button.click();
  const download = await downloading;
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
});
