import type { Page } from '@playwright/test';
import { expect } from '../window.ts';
import { placePx, rig } from './smallRig.ts';

/** How far a colour may be from the bare ground's, all channels together: the ticket at the top throws a shadow on it. */
const SHADE = 90;

/** How many pixels under each thing that lies over the picture are not of the bare ground. */
async function pixelsUnder(page: Page): Promise<number[]> {
  await page.waitForFunction(() => window.__hosewright?.scene().atRest === true);
  const over = page.locator('[data-over-bay]');
  const boxes = await over.evaluateAll((elements) =>
    elements.map((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      // Without the edge of the ticket above.
      return { x, y: y + 2, width, height: height - 2 };
    }),
  );
  const hide = (visibility: string): Promise<void> =>
    over.evaluateAll((elements, now) => {
      for (const element of elements) if (element instanceof HTMLElement) element.style.visibility = now;
    }, visibility);
  await hide('hidden');
  const counts: number[] = [];
  for (const clip of boxes) {
    const picture = (await page.screenshot({ clip })).toString('base64');
    counts.push(
      await page.evaluate(
        async ([base64, shade]) => {
          const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
          const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
          const canvas = new OffscreenCanvas(image.width, image.height);
          const pen = canvas.getContext('2d');
          pen?.drawImage(image, 0, 0);
          const { data } = pen?.getImageData(0, 0, image.width, image.height) ?? { data: [] };
          const ground = [...data.slice(-4)];
          let count = 0;
          for (let i = 0; i < data.length; i += 4) {
            const off = [0, 1, 2].reduce((sum, k) => sum + Math.abs((data[i + k] ?? 0) - (ground[k] ?? 0)), 0);
            if (off > shade) count++;
          }
          return count;
        },
        [picture, SHADE] as const,
      ),
    );
  }
  await hide('');
  return counts;
}

for (const viewport of [
  { width: 1280, height: 720 },
  { width: 1440, height: 900 },
])
  rig.describe(`${viewport.width} by ${viewport.height}`, () => {
    rig.use({
      viewport,
      project: async ({ folder }, use) => use(folder),
      contextOptions: { reducedMotion: 'reduce' },
    });

    rig('no legend and no tool lies over the bay that is fitted in view', async ({ opened: { page } }) => {
      await placePx(page, [0, 0, 0]);
      await expect.poll(() => pixelsUnder(page)).toEqual([0, 0, 0]);
      await page.getByRole('button', { name: /^Heat/ }).click();
      await expect(page.getByText('Outside of each hose, running: an estimate')).toBeVisible();
      await page.mouse.move(2, 2);
      await expect.poll(() => pixelsUnder(page)).toEqual([0, 0, 0]);
      await page.getByRole('button', { name: 'Lay this run' }).click();
      await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
      await expect(page.getByRole('region', { name: 'Work under way' })).toBeHidden({ timeout: 60_000 });
      // Without being asked, since nobody has moved the eye.
      await page.mouse.move(2, 2);
      // The tags of its ends are as large in a low picture as in a tall one, and may reach under the drawer's pull.
      await expect.poll(async () => (await pixelsUnder(page)).slice(0, 2)).toEqual([0, 0]);
    });
  });
