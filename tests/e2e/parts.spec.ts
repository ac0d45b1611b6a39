import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Locator } from '@playwright/test';
import { rig } from './window/smallRig.ts';
import { expect } from './window.ts';

rig.use({ project: async ({ folder }, use) => use(folder) });

async function fill(within: Locator, fields: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(fields)) await within.getByRole('textbox', { name }).fill(text);
}

rig('an end is measured, kept, put on a run, saved, and is there again', async ({ opened: { page }, folder }) => {
  await page.getByRole('button', { name: 'Parts', exact: true }).click();
  const drawer = page.getByRole('region', { name: 'Parts' });
  await expect(drawer.getByRole('heading', { name: 'Choose an end' })).toBeVisible();
  await drawer.getByRole('button', { name: 'New end' }).first().click();
  await fill(drawer, { Name: 'My elbow', 'Dash size': '6', 'Bend angle': '45' });
  await drawer.getByRole('button', { name: 'Measure it yourself' }).click();

  // Drawn on paper: legs 20 sqrt 2 and 20 at 45 degrees, tail 22 long and 10 thick, rim 12: C 40, drop 20.
  await expect(drawer.getByRole('radio', { name: 'Elbow' })).toBeChecked();
  const reading = (words: string) => drawer.getByRole('textbox', { name: words });
  await reading('square on the tip, along the tail').fill('57.76');
  await reading('the same to the edge of the rim outside the bend').fill('66.24');
  await reading('tail flat on the plate').fill('29.24');
  await reading('plate to the edge of the rim outside the bend').fill('20.76');
  await reading('across the tail').fill('10');
  await reading('tip of the tail to the shoulder').fill('22');
  const outcome = drawer.getByRole('region', { name: 'What it comes to' });
  await expect(outcome).toContainText('40.0 mm');
  await expect(outcome).toContainText('20.0 mm');
  await expect(outcome).toContainText('Bend holds');
  await reading('across the rim').fill('18');
  await expect(outcome).toContainText('Take again: W.');
  await reading('across the rim').fill('15/32');
  await expect(outcome).not.toContainText('Take again');
  await drawer.getByRole('button', { name: 'Write it on the card' }).click();

  await expect(drawer.getByRole('textbox', { name: 'C, cut-off' })).toHaveValue('40');
  await drawer.getByRole('button', { name: 'Keep' }).click();
  await expect(drawer.getByText('Still to be stated.').first()).toBeVisible();
  await fill(drawer, { 'Shoulder to mouth': '25', 'Collar diameter': '22' });
  await drawer.getByRole('combobox', { name: 'Joint' }).selectOption({ label: 'Crimped' });
  await drawer.getByRole('combobox', { name: 'Material' }).selectOption({ label: 'Steel' });
  await drawer.getByRole('button', { name: 'Keep' }).click();
  await expect(drawer.getByRole('list', { name: 'ends' }).getByText('My elbow')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(drawer).toBeHidden();

  await page.getByRole('combobox', { name: 'END A at Left' }).selectOption({ label: 'My elbow' });
  await page.getByRole('button', { name: 'Save project' }).click();
  await expect(page.getByText('Saved: project')).toBeVisible();
  const table = await readFile(path.join(folder, 'ends.csv'), 'utf8');
  expect(table).toMatch(/^my-elbow,My elbow,flare-37,6,45,.*measured with caliper and square: b 45, Ai 57\.76/m);

  await page.reload();
  await expect(page.getByRole('combobox', { name: 'END A at Left' })).toHaveValue('my-elbow');
  await page.keyboard.press('i');
  await drawer.getByRole('list', { name: 'ends' }).getByText('My elbow').click();
  await expect(drawer.getByRole('textbox', { name: 'C, cut-off' })).toHaveValue('40');
  await drawer.getByRole('button', { name: 'Take out' }).click();
  await expect(drawer.getByText('in use by Feed; choose another part there first')).toBeVisible();
});

rig('a table brought in tells its problems, is taken in, taken back and written out', async ({ opened: { page } }) => {
  await expect(page.getByRole('button', { name: 'Parts', exact: true })).toBeVisible();
  await page.keyboard.press('i');
  const drawer = page.getByRole('region', { name: 'Parts' });
  await drawer.getByRole('button', { name: /^clamps/i }).click();
  await expect(drawer.getByRole('heading', { name: 'No clamp in the drawer yet' })).toBeVisible();
  const headings =
    'id,name,holds_from_mm,holds_to_mm,stand_off_mm,width_mm,material,max_temperature_c,provenance,source';
  const bring = async (rows: string): Promise<void> => {
    const choosing = page.waitForEvent('filechooser');
    await drawer.getByRole('button', { name: 'Bring in a CSV' }).first().click();
    const buffer = Buffer.from(`${headings}\n${rows}\n`);
    await (await choosing).setFiles([{ name: 'clamps.csv', mimeType: 'text/csv', buffer }]);
  };
  await bring('c 1,Clamp,14,12,9,12,steel,x,own,mine');
  await expect(drawer.getByText('clamps.csv row 2, id: expected lower-case letters')).toBeVisible();
  await expect(drawer.getByText('clamps.csv row 2, max_temperature_c: expected a number')).toBeVisible();
  await drawer.getByRole('button', { name: 'Leave it' }).click();
  await bring('c-1,Clamp,12,14,9,12,steel,150,own,mine');
  await drawer.getByRole('button', { name: 'Put them beside what is here' }).click();
  await expect(drawer.getByRole('list', { name: 'clamps' }).getByText('Clamp')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(drawer.getByRole('heading', { name: 'No clamp in the drawer yet' })).toBeVisible();
  await page.keyboard.press('Control+Shift+z');
  const downloading = page.waitForEvent('download');
  await drawer.getByRole('button', { name: 'Write a CSV' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('clamps.csv');
  expect(await readFile(await download.path(), 'utf8')).toContain('c-1,Clamp,12,14,9,12,steel,150,own,mine');
});
