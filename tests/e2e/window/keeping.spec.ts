import { mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from '../window.ts';
import { rig, typeInto } from './smallRig.ts';

/** Triangles of a scan that takes a while to read: 100 MB as binary STL. */
const MANY = 2_000_000;

/** Drops a large scan on the window, made in the page itself: a sheet of triangles 1 m wide. */
async function dropLargeScan(page: Page): Promise<void> {
  await page.evaluate((count) => {
    const bytes = new ArrayBuffer(84 + 50 * count);
    const view = new DataView(bytes);
    view.setUint32(80, count, true);
    const across = 1414;
    for (let i = 0; i < count; i++) {
      const [x, y] = [i % across, Math.floor(i / across)];
      const corners = [x, y, 0, x + 1, y, 0, x, y + 1, (i * 7) % 3];
      for (let k = 0; k < 9; k++) view.setFloat32(84 + 50 * i + 12 + 4 * k, corners[k] as number, true);
    }
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([bytes], 'large.stl'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, MANY);
}

test('a large scan that is dropped shows how far it is read, and is left', async ({ opened: { page } }) => {
  await expect(page.getByRole('button', { name: 'Open the example bay' })).toBeEnabled();
  await dropLargeScan(page);
  const work = page.getByRole('region', { name: 'Work under way' });
  await expect(work).toContainText('Reading the scan');
  await expect(work.getByRole('progressbar', { name: 'Reading the scan' })).toBeVisible();
  await work.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByText('Reading the scan: stopped')).toBeVisible();
  await expect(page.getByRole('button', { name: 'New bay from a scan' })).toBeEnabled();
  await expect(page.getByRole('heading', { name: 'How large is it?' })).toBeHidden();
});

rig.describe('nothing is lost', () => {
  rig.use({ project: async ({ folder }, use) => use(folder) });

  rig('a project that cannot be read, and a save that fails, leave the bench as it is', async ({ opened, folder }) => {
    const { page, faults } = opened;
    await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled();
    const slack = page.getByRole('textbox', { name: 'Slack wanted' });
    await typeInto(slack, '7');
    const unsaved = page.getByTitle('Not saved yet');
    await expect(unsaved).toBeVisible();

    const broken = await mkdtemp(path.join(tmpdir(), 'hosewright-broken-'));
    await mkdir(path.join(broken, 'parts'));
    await writeFile(path.join(broken, 'project.json'), '{ "format": "hosewright-project", "version": 1, "runs": 7 }');
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open another' }).click();
    await (await choosing).setFiles(broken);
    const note = page.getByRole('alert');
    await expect(note).toContainText('The project has problems');
    await expect(note).toContainText('runs');
    await expect(page.getByRole('heading', { name: 'Small rig', level: 1 })).toBeVisible();
    await expect(slack).toHaveValue('7.0');
    await expect(unsaved).toBeVisible();
    await page.getByRole('button', { name: 'Close this note' }).click();

    const before = await readFile(path.join(folder, 'project.json'), 'utf8');
    await page.route('**/project/given', (route) => route.abort());
    await page.keyboard.press('Control+s');
    await expect(note).toContainText('could not be saved');
    await expect(note).toContainText('is it still running?');
    await expect(unsaved).toBeVisible();
    expect(await readFile(path.join(folder, 'project.json'), 'utf8')).toBe(before);
    // The request that was cut off is what Chromium itself logs.
    faults.splice(0, faults.length, ...faults.filter((fault) => !fault.includes('ERR_FAILED')));
    await page.unroute('**/project/given');
    await page.keyboard.press('Control+s');
    await expect(page.getByText('Saved: project')).toBeVisible();
    await expect(unsaved).toBeHidden();
    expect(JSON.parse(await readFile(path.join(folder, 'project.json'), 'utf8')).runs[0].slack).toBe(0.07);
  });

  rig('a project is opened again as soon as it is there, time after time', async ({ opened: { page }, folder }) => {
    for (let time = 0; time < 6; time++) {
      const before = await page.evaluateHandle(() => window.__hosewright);
      const choosing = page.waitForEvent('filechooser');
      await page.keyboard.press('Control+o');
      await (await choosing).setFiles(folder);
      await page.waitForFunction((old) => window.__hosewright !== undefined && window.__hosewright !== old, before);
      await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled();
    }
    await expect(page.getByRole('alert')).toBeHidden();
  });

  rig('a lay that is stopped leaves the project, and can be made again', async ({ opened: { page } }) => {
    const lay = page.getByRole('button', { name: 'Lay this run' });
    await expect(lay).toBeEnabled();
    await lay.click();
    await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
    const run = page.getByRole('list', { name: 'Runs' }).getByRole('button', { name: 'Feed' });
    const laid = await run.textContent();
    await typeInto(page.getByRole('textbox', { name: 'Slack wanted' }), '9');
    await expect(run).toContainText('changed, lay again');
    await lay.click();
    await page.keyboard.press('Escape');
    await expect(page.getByText(/stopped|laid clean/).first()).toBeVisible({ timeout: 60_000 });
    await page.keyboard.press('Control+z');
    await expect.poll(() => run.textContent()).toBe(laid);
  });

  rig('lengths are typed as a builder types them, or refused with what they would be read as', async ({ opened }) => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Lay this run' }).click();
    await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible({ timeout: 60_000 });
    await page.keyboard.press('g');
    const to = page
      .getByRole('group', { name: 'Stretch to lock, from shoulder A' })
      .getByRole('textbox', { name: 'To' });
    for (const [typed, shown] of [
      ['14 3/8', '365.1'],
      ['14-3/8"', '365.1'],
      ['380mm', '380.0'],
      ['375', '375.0'],
    ] as const) {
      await typeInto(to, typed);
      await expect(to, typed).toHaveValue(shown);
    }
    // Past the end of the hose, no number at all, and digits in code, which mean two things.
    for (const [typed, words] of [
      ['4000mm', /Expected a length from .* to /],
      ['about a foot', /./],
      ['0147', /./],
    ] as const) {
      await to.fill(typed);
      await expect(page.locator('.field-wrong'), typed).toContainText(words);
      await expect(to).toHaveAttribute('aria-invalid', 'true');
    }
    // MIL-DTL-8788F: the last digit is eighths.
    await page.getByRole('button', { name: '0147 in inches and eighths = 14-7/8 in' }).click();
    await expect(to).toHaveValue('377.8');
    await page.getByRole('button', { name: 'Lengths in mm; change to inches first' }).click();
    await typeInto(to, '14 3/8');
    await expect(to).toHaveValue('14.375');
  });
});
