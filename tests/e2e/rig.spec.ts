import { readFile } from 'node:fs/promises';
import { rig } from './window/smallRig.ts';
import { expect } from './window.ts';

rig.use({ project: async ({ folder }, use) => use(folder) });

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
