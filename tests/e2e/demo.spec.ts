import { readFile } from 'node:fs/promises';
import { expect, test } from './window.ts';

/** ms. Every run of the example is really laid, on machines of every speed; this only ends a lay that hangs. */
const LAYING_LIMIT_MS = 900_000;

test('from the example bay to build sheets on disk', async ({ opened: { page } }) => {
  test.setTimeout(LAYING_LIMIT_MS + 60_000);
  await page.getByRole('button', { name: 'Open the example bay' }).click();
  await page.getByRole('button', { name: 'Lay all runs' }).click({ timeout: 120_000 });
  await page.getByRole('button', { name: 'Papers' }).click();
  const button = page.getByRole('button', { name: 'Download build sheets' });
  await expect(button).toBeEnabled({ timeout: LAYING_LIMIT_MS });
  // Laid by as many workers as the machine runs at once, four at most; by the one that does the job where that is one.
  const cores = await page.evaluate(() => navigator.hardwareConcurrency);
  const laying = page.workers().filter((worker) => worker.url().includes('lays.worker'));
  expect(laying).toHaveLength(cores < 2 ? 0 : Math.min(4, cores));
  const downloading = page.waitForEvent('download', { timeout: 120_000 });
  await button.click();
  const download = await downloading;
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
});
