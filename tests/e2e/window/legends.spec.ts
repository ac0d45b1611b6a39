import type { Page } from '@playwright/test';
import { expect } from '../window.ts';
import { placePx, rig } from './smallRig.ts';

/** How far a colour may be from the bare ground's, all channels together: the ticket at the top throws a shadow on it. */
const SHADE = 90;

/** The corners of the small rig's mesh, mm. */
const CORNERS = [-100, 700].flatMap((x) =>
  [-150, 150].flatMap((y) => [-20, 20].map((z) => [x, y, z] as [number, number, number])),
);
/** px. From the left edge of the picture to the place whose colour is the bare ground's. */
const BESIDE_PX = 6;

/** A picture of the ground where nothing of the bay can be: at the left edge, and the bay lies wholly to the right of it. */
async function bareGround(page: Page): Promise<string> {
  const box = await page.locator('main canvas').first().boundingBox();
  if (box === null) throw new Error('no picture');
  const x = box.x + BESIDE_PX;
  const lefts = await Promise.all(CORNERS.map(async (corner) => (await placePx(page, corner))[0]));
  expect(Math.min(...lefts)).toBeGreaterThan(x + BESIDE_PX);
  const picture = await page.screenshot({ clip: { x, y: box.y + box.height / 2, width: 1, height: 1 } });
  return picture.toString('base64');
}

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
  const bare = await bareGround(page);
  const counts: number[] = [];
  for (const clip of boxes) {
    const picture = (await page.screenshot({ clip })).toString('base64');
    counts.push(
      await page.evaluate(
        async ([base64, bareBase64, shade]) => {
          const pixelsOf = async (png: string) => {
            const bytes = Uint8Array.from(atob(png), (c) => c.charCodeAt(0));
            const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
            const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
            pen?.drawImage(image, 0, 0);
            return pen?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
          };
          const [data, ground] = [await pixelsOf(base64), await pixelsOf(bareBase64)];
          let count = 0;
          for (let i = 0; i < data.length; i += 4) {
            const off = [0, 1, 2].reduce((sum, k) => sum + Math.abs((data[i + k] ?? 0) - (ground[k] ?? 0)), 0);
            if (off > shade) count++;
          }
          return count;
        },
        [picture, bare, SHADE] as const,
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

    rig('what lies wholly on one flat face of the bay counts as over it', async ({ opened: { page } }) => {
      const [x, y] = await placePx(page, [450, -80, -10]);
      await page.waitForFunction(() => window.__hosewright?.scene().atRest === true);
      await page.evaluate(
        ([left, top]) => {
          const legend = document.createElement('div');
          legend.dataset['overBay'] = '';
          legend.style.cssText = `position: fixed; left: ${left}px; top: ${top}px; width: 12px; height: 12px`;
          document.body.append(legend);
        },
        [Math.round(x) - 6, Math.round(y) - 6] as const,
      );
      expect((await pixelsUnder(page)).at(-1)).toBe(12 * 10);
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
