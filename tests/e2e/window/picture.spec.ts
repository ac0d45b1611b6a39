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
  await losing.evaluate((extension) => extension?.restoreContext());
  await expect(lost).toBeHidden();
});

rig('without 3D drawing it is said what still works, and it does', async ({ opened: { page } }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.reload();
  await expect(page.getByRole('heading', { name: 'No picture of the bay on this machine' })).toBeVisible();
  await expect(page.getByText('Laying, checks, the straight view, papers and every value work')).toBeVisible();
  await page.getByRole('button', { name: 'Lay this run' }).click();
  await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
});
