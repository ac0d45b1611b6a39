import { hasMesh, motorbikeFolder, SKIPPED } from '../realBays/motorbike.ts';
import { expect, test } from './window.ts';

test.describe('a real motorbike in the window', () => {
  test.skip(!hasMesh, SKIPPED);
  test.use({ project: hasMesh ? motorbikeFolder() : undefined });

  test('both coolant hoses are laid, and neither is forbidden to cut', async ({ opened: { page } }) => {
    test.setTimeout(300_000);
    await page.getByRole('button', { name: 'Lay all runs' }).click({ timeout: 120_000 });
    const runs = page.getByRole('list', { name: 'Runs' });
    for (const name of ['pump-to-radiator', 'head-to-radiator']) {
      const row = runs.getByRole('listitem').filter({ hasText: name });
      await expect(row).toContainText(/\d mm/, { timeout: 240_000 });
      await expect(row).not.toContainText('do not cut');
    }
  });
});
