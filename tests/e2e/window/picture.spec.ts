import { expect } from '../window.ts';
import { placePx, rig } from './smallRig.ts';

rig.use({ project: async ({ folder }, use) => use(folder) });

rig('a picture that the graphics card gives up is said to be lost, and comes back', async ({ opened: { page } }) => {
  await placePx(page, [0, 0, 0]);
  const lost = page.getByText('The graphics card gave the picture up');
  const losing = await page.evaluateHandle(() =>
    document.querySelector('canvas')?.getContext('webgl2')?.getExtension('WEBGL_lose_context'),
  );
  await losing.evaluate((extension) => extension?.loseContext());
  await expect(lost).toBeVisible();
  await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled();
  // What is asked of it meanwhile is not lost.
  await page.keyboard.press('a');
  await losing.evaluate((extension) => extension?.restoreContext());
  await expect(lost).toBeHidden();
  await page.waitForFunction(() => (window.__hosewright?.scene().trianglesDrawn ?? 0) > 0);
});

rig('without 3D drawing it is said what still works, and it does', async ({ opened: { page } }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.reload();
  await expect(page.getByRole('heading', { name: 'No picture of the bay on this machine' })).toBeVisible();
  await expect(page.getByText('Laying, checks, the straight view, papers and every value work')).toBeVisible();
  // A tool that would look for a place in the picture says what to do without one.
  await page.keyboard.press('o');
  await expect(page.getByRole('alert')).toContainText('Put a port in the middle of the bay');
  await page.getByRole('button', { name: 'Close this note' }).click();
  await page.keyboard.press('3');
  await page.getByRole('button', { name: 'Lay this run' }).click();
  await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
});
