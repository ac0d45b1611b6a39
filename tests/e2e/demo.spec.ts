import { readFile } from 'node:fs/promises';
import { expect, test } from './window.ts';

test('from the example bay to a build sheet on disk', async ({ opened: { page } }) => {
  expect(await page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
  await page.getByRole('button', { name: 'Open the example bay' }).click();
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  await page.getByRole('button', { name: 'Papers' }).click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download build sheets' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
});
