import { expect } from '../window.ts';
import { rig } from './smallRig.ts';

rig.use({ project: async ({ folder }, use) => use(folder) });

rig('a laid run shows its page, drawn anew by a choice, and downloads', async ({ opened: { page } }) => {
  await page.getByRole('button', { name: 'Lay this run' }).click();
  await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Papers', exact: true }).click();
  const sheet = page.getByRole('img', { name: /^Feed, page 1 of/ });
  await expect(sheet).toBeVisible();
  const shape = async (): Promise<number> => {
    const box = await sheet.boundingBox();
    return box === null ? 0 : box.height / box.width;
  };
  // A4 is 297 by 210 mm, Letter 11 by 8.5 in.
  await expect.poll(shape).toBeCloseTo(297 / 210, 1);
  await page.getByRole('combobox', { name: 'Paper', exact: true }).selectOption('Letter');
  await expect.poll(shape).toBeLessThan(1.32);
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download build sheets' }).click();
  expect((await downloading).suggestedFilename()).toMatch(/\.pdf$/);
});
