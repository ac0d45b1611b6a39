import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { smallBay } from '../electron/smallBay.ts';
import { expect, test } from './window.ts';

/** The small rig with its hose cut already, so short that pressure pulls it taut. */
const rig = test.extend({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the pattern to learn that nothing is needed
  project: async ({}, use) => {
    const { runs } = JSON.parse(smallBay()['project.json'] as string) as { runs: object[] };
    const files = smallBay({ runs: runs.map((run) => ({ ...run, cutLengthMm: 566 })) });
    const folder = await mkdtemp(path.join(tmpdir(), 'hosewright-mends-'));
    for (const [name, content] of Object.entries(files)) await writeFile(path.join(folder, name), content);
    await use(folder);
  },
});

rig('what would mend a finding is tried, seen, made, and taken back with its hose', async ({ opened: { page } }) => {
  await expect(page.locator('canvas').first()).toBeVisible();
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  const card = page.getByRole('article', { name: 'Run: Feed' });
  await expect(card.getByText('do not cut', { exact: true })).toBeVisible({ timeout: 150_000 });
  await card.getByRole('button', { name: 'What would mend it' }).first().click();
  const mends = card.getByRole('region', { name: 'What would mend it' });
  await expect(mends).toContainText('A new hose cut to the plan', { timeout: 60_000 });
  const show = mends.getByRole('button', { name: /^Show in the bay: A new hose/ });
  await show.click();
  await expect(show).toHaveAttribute('aria-pressed', 'true');
  await mends.getByRole('button', { name: /^Make it so: A new hose/ }).click();
  await expect(card.getByText('do not cut', { exact: true })).toBeHidden({ timeout: 60_000 });
  await expect(mends).toBeHidden();
  await page.keyboard.press('Control+z');
  await expect(card.getByText('do not cut', { exact: true })).toBeVisible();
});

rig('the keyboard asks what would mend the chosen run', async ({ opened: { page } }) => {
  await expect(page.locator('canvas').first()).toBeVisible();
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  const card = page.getByRole('article', { name: 'Run: Feed' });
  await expect(card.getByText('do not cut', { exact: true })).toBeVisible({ timeout: 150_000 });
  await page.locator('body').press('Shift+R');
  await expect(card.getByRole('region', { name: 'What would mend it' })).toContainText('A new hose cut to the plan', {
    timeout: 60_000,
  });
});
