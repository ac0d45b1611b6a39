import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import type {} from '../../renderer/scene/ContextWatch.tsx';
import { rig } from './window/smallRig.ts';
import { expect } from './window.ts';

rig.use({ project: async ({ folder }, use) => use(folder), viewport: { width: 1100, height: 700 } });

interface SavedProject {
  readonly ports: readonly { readonly name: string }[];
  readonly runs: readonly { readonly supports: readonly { readonly kind: string }[] }[];
}

/**
 * Takes the middle of the chosen hose by the pointer and pulls it a little, and answers when the hose follows. The picture is
 * waited for first: a hose that was changed lies, and can be taken, where it is drawn next. Who still takes nothing, since
 * the bay was given another place in the window meanwhile, takes it again.
 */
async function takeHold(page: Page): Promise<void> {
  const slip = page.getByRole('complementary', { name: 'The hose in the hand' });
  await expect(async () => {
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await page.waitForFunction(() => window.__hosewright?.scene().atRest === true);
    const [x, y] = await page.evaluate(() => window.__hosewright?.scene().hoseMiddlePx ?? ([0, 0] as const));
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const step of [4, 8, 12]) await page.mouse.move(x, y - step);
    await expect(slip.getByText('Cut', { exact: true })).toBeVisible({ timeout: 15_000 });
  }).toPass({ timeout: 120_000 });
}

rig('a hose is clamped and pulled by hand, taken back, and saved', async ({ opened: { page }, folder }) => {
  const undo = page.getByRole('button', { name: 'Undo' });
  const held = page.getByRole('list', { name: 'What holds the hose, END A to END B' });
  const busy = page.getByRole('region', { name: 'Work under way' });
  await page.getByRole('button', { name: 'Lay this run' }).click();
  await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });

  await page.keyboard.press('c');
  await expect(held.getByRole('listitem')).toHaveCount(1);
  await expect(held.getByText('Clamp 1')).toBeVisible();
  await expect(page.getByText('changed, lay again').first()).toBeHidden({ timeout: 60_000 });

  // The middle is clamped now, so the hose is taken beside it.
  await page.keyboard.press('Control+z');
  await expect(held).toBeHidden();
  const slip = page.getByRole('complementary', { name: 'The hose in the hand' });
  await takeHold(page);
  await page.keyboard.press('Escape');
  await expect(slip).toBeHidden();
  await page.mouse.up();
  await expect(undo).toBeDisabled();

  await takeHold(page);
  await page.mouse.up();
  await expect(held.getByText('Waypoint 1')).toBeVisible({ timeout: 60_000 });
  await expect(busy).toBeHidden({ timeout: 60_000 });

  await page.keyboard.press('Control+s');
  await expect(page.getByText('Saved: project')).toBeVisible();
  const saved = JSON.parse(await readFile(path.join(folder, 'project.json'), 'utf8')) as SavedProject;
  expect(saved.runs[0]?.supports.map(({ kind }) => kind)).toEqual(['waypoint']);
});

rig('a port is dropped on the bay, named, and saved', async ({ opened: { page }, folder }) => {
  await page.getByRole('button', { name: 'Ports', exact: true }).click();
  await page.getByRole('button', { name: 'New port' }).click();
  // On a slow machine the bay may be drawn, and find its size, after it is first clicked: who sees nothing happen clicks again.
  await expect(async () => {
    const bay = await page.locator('.bay canvas').boundingBox();
    if (bay === null) throw new Error('no picture');
    await page.mouse.click(bay.x + bay.width / 2, bay.y + bay.height / 2);
    await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Port 3', { timeout: 2000 });
  }).toPass({ timeout: 60_000 });
  await page.getByRole('textbox', { name: 'Name' }).fill('Test boss');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('list', { name: 'Ports' }).getByText('Test boss')).toBeVisible();
  await page.keyboard.press('Control+s');
  await expect(page.getByText('Saved: project')).toBeVisible();
  const saved = JSON.parse(await readFile(path.join(folder, 'project.json'), 'utf8')) as SavedProject;
  expect(saved.ports.map(({ name }) => name)).toEqual(['Left', 'Right', 'Test boss']);
});
