import { expect, test } from '../window.ts';

/** ms. One run of the example is really laid and pulled, on machines of every speed. */
const LAYING_LIMIT_MS = 300_000;

test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('the guided first lay goes on by itself as each thing is done, to the paper', async ({ opened: { page } }) => {
  test.setTimeout(LAYING_LIMIT_MS + 60_000);
  await page.getByRole('button', { name: 'Show me a first lay' }).click();
  const guide = page.getByRole('region', { name: 'A first lay, step by step' });
  await expect(guide).toContainText('1 of 9', { timeout: 60_000 });
  const lay = page.getByRole('button', { name: 'Lay this run' });
  await expect(lay).toBeEnabled({ timeout: 60_000 });
  await guide.getByRole('button', { name: 'Next' }).click();
  await expect(guide).toContainText('Choose “Pump to oil cooler”');
  await page.getByRole('list', { name: 'Runs' }).getByRole('button', { name: 'Pump to oil cooler' }).click();
  await expect(guide).toContainText('Lay it');
  await lay.click();
  await expect(guide).toContainText('Read the straight hose', { timeout: LAYING_LIMIT_MS });
  await page.getByRole('slider', { name: /^Place along/ }).hover({ position: { x: 300, y: 64 } });
  await expect(guide).toContainText('See what was found');
  await page.getByRole('button', { name: 'Checks', exact: true }).click();
  await expect(guide).toContainText('Pull the hose');
  await page.getByRole('button', { name: 'Runs', exact: true }).click();
  const work = page.getByRole('region', { name: 'Work under way' });
  await expect(work).toBeHidden({ timeout: LAYING_LIMIT_MS });
  const [x, y] = await page.evaluate(() => window.__hosewright?.scene().hoseMiddlePx ?? [0, 0]);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const step of [4, 8, 12]) await page.mouse.move(x, y - step);
  await page.mouse.up();
  await expect(guide).toContainText('Take it back', { timeout: LAYING_LIMIT_MS });
  await page.keyboard.press('Control+z');
  await expect(guide).toContainText('See the paper');
  await page.getByRole('button', { name: 'Papers', exact: true }).click();
  await expect(guide).toContainText('That is the whole job');
  await guide.getByRole('button', { name: 'Done' }).click();
  await expect(guide).toBeHidden();
  await expect(page.getByRole('img', { name: /^Pump to oil cooler, page 1/ })).toBeVisible({ timeout: 60_000 });
});
