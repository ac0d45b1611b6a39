import type { Page } from '@playwright/test';
import { placePx, rig } from '../window/smallRig.ts';
import { expect } from '../window.ts';

/**
 * The bay as it is drawn, without panels. Chromium draws it by the processor everywhere, so machines differ only in how edges
 * are smoothed and letters of flags are set. A pixel counts as another one from a fifth of the way between black and white on
 * (Playwright's own measure), and one in a hundred may: a hose that is not drawn changes four to five in a hundred here, and
 * the face of a flag alone is more than one.
 */
const SAME_PICTURE = { threshold: 0.2, maxDiffPixelRatio: 0.01 };

/** Nothing over the picture, and the pointer off it: what is left is drawn by the scene. */
async function bareBay(page: Page) {
  await placePx(page, [0, 0, 0]);
  await page.mouse.move(2, 2);
  await page.evaluate(() => {
    for (const child of document.querySelector('.bay')?.children ?? [])
      if (child instanceof HTMLElement && child.querySelector('canvas') === null) child.style.visibility = 'hidden';
  });
  return page.locator('.bay canvas').first();
}

rig.use({
  project: async ({ folder }, use) => use(folder),
  viewport: { width: 860, height: 760 },
  contextOptions: { reducedMotion: 'reduce' },
});

for (const theme of ['light', 'dark'] as const) {
  rig.describe(theme, () => {
    rig.use({ colorScheme: theme });

    rig('a rig with its ports', async ({ opened: { page } }) => {
      await expect(await bareBay(page)).toHaveScreenshot(`rig-${theme}.png`, SAME_PICTURE);
    });

    rig('its laid hose, with the flag of what was found on it', async ({ opened: { page } }) => {
      await page.getByRole('button', { name: 'Lay this run' }).click();
      await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
      await expect(page.getByRole('region', { name: 'Work under way' })).toBeHidden({ timeout: 60_000 });
      await expect(await bareBay(page)).toHaveScreenshot(`hose-${theme}.png`, SAME_PICTURE);
    });
  });
}
