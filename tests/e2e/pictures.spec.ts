import { expect, test } from './window.ts';

test.skip(process.env['HOSEWRIGHT_PICTURES'] === undefined, 'draws the README picture only when asked to');

test('the picture of the README', async ({ opened: { page } }) => {
  test.setTimeout(900_000);
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.getByRole('button', { name: 'Open the example bay' }).click();
  await page.getByRole('button', { name: 'Lay all runs' }).click({ timeout: 120_000 });
  const runs = page.getByRole('list', { name: 'Runs' });
  await expect(runs.getByText('laid clean').first()).toBeVisible({ timeout: 800_000 });
  await runs.getByText('Turbo oil feed').first().click();
  await page.waitForTimeout(5000);
  await page.screenshot({ path: '.pictures/bench.png' });
});
