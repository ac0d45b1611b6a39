import { expect } from '../window.ts';
import { placePx, rig } from './smallRig.ts';

rig.use({ project: async ({ folder }, use) => use(folder), contextOptions: { reducedMotion: 'reduce' } });

/** px from a port's place to the middle of its tag, which hangs beside it. */
const TAG_PX = 30;

rig('both ports of a new run are picked in the bay by their tags', async ({ opened: { page } }) => {
  await page.getByRole('button', { name: 'Remove this run' }).click();
  await page.getByRole('button', { name: 'New run' }).click();
  const card = page.getByRole('article', { name: 'New run' });
  const [a, b] = ['END A at', 'END B at'].map((name) => card.getByRole('combobox', { name }).locator('option:checked'));
  await expect(a!).toHaveText(/^Left/);
  await expect(b!).toHaveText(/^Right/);
  const pick = async (at: readonly [number, number, number]): Promise<void> => {
    const [x, y] = await placePx(page, at);
    await page.mouse.move(x + TAG_PX, y - 1);
    await page.mouse.click(x + TAG_PX, y);
  };
  await expect(card.getByText(/Click the tag of END A/)).toBeVisible();
  await pick([600, 0, 60]);
  await expect(a!).toHaveText(/^Right/);
  await expect(b!).toHaveText(/^Left/);
  await expect(card.getByText(/Click the tag of END B/)).toBeVisible();
  await pick([0, 0, 60]);
  await expect(b!).toHaveText(/^Left/);
  await expect(card.getByText(/Click the tag of END A/)).toBeVisible();
});
