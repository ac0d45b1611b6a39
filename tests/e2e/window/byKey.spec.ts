import { expect } from '../window.ts';
import { placePx, rig } from './smallRig.ts';

rig.use({ project: async ({ folder }, use) => use(folder), contextOptions: { reducedMotion: 'reduce' } });

rig(
  'a port is put and a distance measured by keys alone, in the middle of the picture',
  async ({ opened: { page } }) => {
    const inHand = page.getByRole('region', { name: 'In the hand' });
    await placePx(page, [0, 0, 0]);
    await page.keyboard.press('o');
    await page.keyboard.press('z');
    await expect(inHand).toContainText(/box.*key z takes it/);
    await expect(page.getByRole('textbox', { name: 'Name' })).toHaveCount(0);
    await page.keyboard.press('z');
    await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Port 3');
    await page.keyboard.press('Control+z');

    await page.keyboard.press('Shift+M');
    await page.keyboard.press('z');
    await page.keyboard.press('z');
    await expect(inHand).toContainText(/From box0 to: /);
    for (const _again of [1, 2]) await page.keyboard.press('z');
    await expect(page.getByRole('alert')).toContainText('This place is taken');
    await expect(inHand).toContainText(/From box0 to: /);
    const before = await placePx(page, [0, 0, 0]);
    for (const key of ['Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowUp']) await page.keyboard.press(key);
    await expect.poll(async () => (await placePx(page, [0, 0, 0]))[0]).toBeLessThan(before[0] - 20);
    // On a slow machine the look may still be on its way: a place that was marked from there is marked anew, not taken.
    await expect(async () => {
      await page.keyboard.press('z');
      await expect(inHand).toContainText('Measured', { timeout: 1000 });
    }).toPass();
    const read = Number(/([\d.]+) mm/.exec((await inHand.locator('b').last().textContent()) ?? '')?.[1]);
    expect(read).toBeGreaterThan(10);

    // A slider keeps its arrows, with Shift also.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Shift+X');
    await page.getByRole('region', { name: 'The bay cut open' }).getByRole('slider').first().focus();
    await page.waitForFunction(() => window.__hosewright?.scene().atRest === true);
    const still = await placePx(page, [0, 0, 0]);
    await page.keyboard.press('Shift+ArrowRight');
    await page.waitForTimeout(500);
    expect(await placePx(page, [0, 0, 0])).toEqual(still);
  },
);
