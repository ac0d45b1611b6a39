import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { canReadPdf, pdfPages } from '../../shared/sheets/readPdf.ts';
import { expect } from '../window.ts';
import { rig, typeInto } from './smallRig.ts';

rig.use({
  project: async ({ folder }, use) => use(folder),
  contextOptions: { reducedMotion: 'reduce' },
});

/** ms. The small rig's hose is really laid, on machines of every speed. */
const LAID = { timeout: 120_000 };

/** Until the run lies as it is stated: a change is laid by itself a moment after it is made. */
async function idle(page: Page): Promise<void> {
  await expect(page.getByText('changed, lay again')).toHaveCount(0, LAID);
  await expect(page.getByRole('region', { name: 'Work under way' })).toBeHidden(LAID);
}

async function layIt(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Lay this run' }).click();
  await expect(page.getByText('Cut, shoulder to shoulder')).toBeVisible(LAID);
  await idle(page);
}

const heldRow = (page: Page, name: string): Locator =>
  page
    .getByRole('list', { name: 'What holds the hose, END A to END B' })
    .getByRole('listitem')
    .filter({ hasText: name });

/** mm from shoulder A, as a row of the list of what holds the hose tells it. */
async function placeOf(row: Locator): Promise<number> {
  const words = ((await row.textContent()) ?? '').replace(/\s+/g, ' ');
  return Number(/at ([\d.]+) mm/.exec(words)?.[1]);
}

/** px of the straight view for a millimetre: its rule has lines at whole hundreds. */
async function pxPerMm(page: Page): Promise<number> {
  const at = async (number: string): Promise<number> => {
    const box = await page.locator('.straight .rule text').getByText(number, { exact: true }).first().boundingBox();
    return box === null ? Number.NaN : box.x + box.width / 2;
  };
  return ((await at('400')) - (await at('200'))) / 200;
}

/** Takes the middle of something on the straight view and pulls it sideways. */
async function pull(page: Page, mark: Locator, byPx: number): Promise<void> {
  const box = await mark.boundingBox();
  if (box === null) throw new Error('pull: there is nothing to pull');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + byPx / 2, y);
  await page.mouse.move(x + byPx, y);
  await page.mouse.up();
  await idle(page);
}

rig('a clamp is slid along the straight hose by the pointer, and back by undo', async ({ opened: { page } }) => {
  await layIt(page);
  await page.keyboard.press('c');
  const clamp = heldRow(page, 'Clamp 1');
  await expect(clamp).toBeVisible();
  await idle(page);
  const before = await placeOf(clamp);
  const perMm = await pxPerMm(page);
  await pull(page, page.locator('.straight .clamp').first(), 90);
  await expect.poll(async () => Math.abs((await placeOf(clamp)) - (before + 90 / perMm))).toBeLessThan(4);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => placeOf(clamp)).toBeCloseTo(before, 1);
});

rig('a pass-through is put on the straight hose, described, slid, and saved', async ({ opened: { page }, folder }) => {
  await layIt(page);
  await page.getByRole('button', { name: /^Pass-through/ }).click();
  const straight = await page.getByRole('slider', { name: /^Place along/ }).boundingBox();
  if (straight === null) throw new Error('the straight view is not there');
  await page.mouse.click(straight.x + straight.width / 2, straight.y + 64);
  const row = heldRow(page, 'Pass-through 1');
  await expect(row).toBeVisible();
  await idle(page);
  await typeInto(row.getByRole('textbox', { name: 'Name', exact: true }), 'Tunnel');
  const named = heldRow(page, 'Tunnel');
  await named.getByRole('combobox', { name: 'Sealed by' }).selectOption({ label: 'A grommet' });
  await named.getByRole('checkbox', { name: 'Through a firewall' }).check();
  await typeInto(named.getByRole('textbox', { name: 'Hole across' }), '1 1/4 in');
  await idle(page);
  const before = await placeOf(named);
  await pull(page, page.locator('.straight .clamp').first(), -60);
  await expect.poll(() => placeOf(named)).toBeLessThan(before - 20);

  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+s');
  await expect(page.getByText('Saved: project')).toBeVisible();
  const saved = JSON.parse(await readFile(path.join(folder, 'project.json'), 'utf8'));
  expect(saved.runs[0].supports).toEqual([
    expect.objectContaining({
      kind: 'pass-through',
      name: 'Tunnel',
      seal: 'grommet',
      inFirewall: true,
      holeMm: expect.closeTo(31.75, 6),
    }),
  ]);
  await named.getByRole('button', { name: 'Remove Tunnel' }).click();
  await expect(named).toBeHidden();
});

rig('a locked stretch is pulled longer by its end on the straight hose', async ({ opened: { page } }) => {
  await layIt(page);
  await page.keyboard.press('g');
  await page.keyboard.press('g');
  const lock = page.getByRole('group', { name: 'Locked stretch 1' });
  await expect(lock).toBeVisible(LAID);
  await idle(page);
  const end = async (): Promise<number> => Number(await lock.getByRole('textbox', { name: 'To' }).inputValue());
  const before = await end();
  const perMm = await pxPerMm(page);
  await pull(page, page.locator('.straight .locked-grip').nth(1), 50);
  await expect.poll(async () => Math.abs((await end()) - (before + 50 / perMm))).toBeLessThan(3);
});

rig('the tags of the hoses are looked at and printed', async ({ opened: { page } }) => {
  await layIt(page);
  await page.keyboard.press('5');
  await expect(page.getByRole('img', { name: /^Feed, page 1 of/ })).toBeVisible();
  await page.getByText('Tags', { exact: true }).first().click();
  await expect(page.getByRole('img', { name: 'Tags, page 1 of 1' })).toBeVisible();
  await expect(page.getByRole('radio', { name: 'Tags' })).toBeChecked();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download tags' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('tags.pdf');
  if (!canReadPdf) return;
  const text = pdfPages(await readFile(await download.path())).join(' ');
  for (const word of ['END A', 'to Left', 'END B', 'to Right', 'Test hose 6', '600 kPa (87 psi)', 'Tested on'])
    expect(text).toContain(word);
});
