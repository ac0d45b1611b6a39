import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { addScaled, distance, type Vec3 } from '../../../shared/base/vec3.ts';
import type { Port, Project } from '../../../shared/document/project/schema.ts';
import { expect, test } from '../window.ts';
import { demoPort, goTo, pointAt, runRow, undoAll } from './onBench.ts';
import type { SharedPage } from './sharedWindow.ts';

/** mm of bore radius a dash size: sixteenths of an inch of the tube it was named for. */
const RADIUS_PER_DASH_MM = 25.4 / 32;

/** A place on the round edge of the union that a port sits on, a little behind its face. */
function onRim({ seatPoint, up, axis, dash }: Port): Vec3 {
  return addScaled(addScaled(seatPoint, up, dash * RADIUS_PER_DASH_MM), axis, -1);
}

/** Chooses a port, which flies to it; one that is chosen already has been flown to. */
async function flyToPort(page: Page, name: string): Promise<void> {
  const row = page.getByRole('list', { name: 'Ports' }).locator('button[aria-expanded]').filter({ hasText: name });
  if ((await row.getAttribute('aria-expanded')) === 'false') await row.click();
}

/** Points at the rim until the window has found it round, then clicks. */
async function clickRim(page: Page, port: Port): Promise<void> {
  await expect(async () => {
    await pointAt(page, onRim(port));
    await expect(page.getByRole('region', { name: 'In the hand' })).toContainText('round rim', { timeout: 2000 });
  }).toPass();
  await page.mouse.down();
  await page.mouse.up();
}

/** Step 1 and 2 of the job on the example. */
export function bayAndPorts(bench: SharedPage, folder: () => string): void {
  test('the bay is cut open by a plane and a box, a cover taken off, all of it whole again', async () => {
    const page = bench();
    const shown = (): Promise<number> => page.evaluate(() => window.__hosewright?.scene().trianglesDrawn ?? 0);
    await expect.poll(shown).toBeGreaterThan(100_000);
    await page.getByRole('button', { name: 'Cut open' }).click();
    const card = page.getByRole('region', { name: 'The bay cut open' });
    await card.getByRole('button', { name: 'Cut square to my look' }).click();
    await expect(card.getByRole('slider', { name: 'Nearer or further' })).toBeVisible();
    const side = card.getByRole('slider', { name: 'z to' });
    await side.focus();
    const whole = Number(await side.inputValue());
    for (let i = 0; i < 3; i++) await page.keyboard.press('PageDown');
    await expect.poll(async () => Number(await side.inputValue())).toBeLessThan(whole - 10);
    await card.getByRole('button', { name: 'Whole again' }).click();
    await expect(side).toHaveValue(String(whole));
    await page.keyboard.press('Escape');
    await expect(card).toBeHidden();

    await goTo(page, 'Bay');
    const before = await shown();
    await page
      .getByRole('group', { name: 'engine-cover', exact: true })
      .getByRole('radio', { name: 'off' })
      .check({ force: true });
    await expect.poll(shown).toBeLessThan(before);
    await page
      .getByRole('group', { name: 'engine-cover', exact: true })
      .getByRole('radio', { name: 'on' })
      .check({ force: true });
    await expect.poll(shown).toBe(before);
  });

  test('from the middle of one union to the middle of another is measured', async () => {
    const page = bench();
    const [vent, inlet] = [await demoPort('catch-tank-vent'), await demoPort('catch-tank-inlet')];
    await goTo(page, 'Ports');
    await flyToPort(page, vent.name);
    await page.keyboard.press('Shift+M');
    const inHand = page.getByRole('region', { name: 'In the hand' });
    for (const port of [vent, inlet]) {
      await flyToPort(page, port.name);
      await expect(async () => {
        await pointAt(page, onRim(port));
        await expect(inHand).toContainText('middle of the round rim', { timeout: 2000 });
      }).toPass();
      await page.mouse.down();
      await page.mouse.up();
    }
    // The unions' faces are the ports' seats by construction.
    const truth = distance(vent.seatPoint, inlet.seatPoint);
    await expect(inHand).toContainText('to the middle of the rim');
    const read = Number(/([\d.]+) mm/.exec((await inHand.locator('b').last().textContent()) ?? '')?.[1]);
    expect(Math.abs(read - truth)).toBeLessThan(0.5);
    await page.keyboard.press('Escape');
    await expect(inHand).toBeHidden();
  });

  test('a port sits down in the middle of a rim, and a run is made by picking two ports', async () => {
    const page = bench();
    const inlet = await demoPort('catch-tank-inlet');
    await goTo(page, 'Ports');
    await flyToPort(page, inlet.name);
    await page.getByRole('button', { name: 'New port' }).click();
    await clickRim(page, inlet);
    const name = page.getByRole('textbox', { name: 'Name' });
    await expect(name).toHaveValue('Port 27');
    await name.fill('Catch tank, found');
    await name.press('Enter');

    await page.getByRole('button', { name: 'New run' }).click();
    const card = page.getByRole('article', { name: 'New run' });
    await expect(card).toContainText('A run joins two ports that no hose joins yet, and there is one.');
    await card.getByRole('button', { name: 'Leave it' }).click();
    await runRow(page, 'Crankcase breather to catch tank').click();
    await page.getByRole('button', { name: 'Remove this run' }).click();
    await page.getByRole('button', { name: 'New run' }).click();
    await card.getByRole('combobox', { name: 'What it is for' }).selectOption('breather');
    await card
      .getByRole('combobox', { name: 'END A at' })
      .selectOption({ label: 'Cam cover breather (-12 37° flare)' });
    await card.getByRole('combobox', { name: 'END B at' }).selectOption({ label: 'Catch tank, found (-12 37° flare)' });
    // What fits stands first and is taken; what does not says why.
    const hose = card.getByRole('combobox', { name: 'Hose' });
    await expect(hose.locator(':scope > option').first()).toContainText('-12');
    await expect(hose.locator('optgroup option').filter({ hasText: 'the port is -12' }).first()).toBeAttached();
    await card.getByRole('textbox', { name: 'Name' }).fill('Breather, made here');
    await card.getByRole('textbox', { name: 'Name' }).press('Enter');
    await card.getByRole('button', { name: 'Add this run' }).click();
    await expect(runRow(page, 'Breather, made here')).toBeVisible();

    await page.keyboard.press('Control+s');
    await expect(page.getByText('Saved: project')).toBeVisible();
    const saved = JSON.parse(await readFile(path.join(folder(), 'project.json'), 'utf8')) as Project;
    const port = saved.ports.find((one) => one.name === 'Catch tank, found');
    expect(distance(port?.seatPoint ?? [0, 0, 0], inlet.seatPoint)).toBeLessThan(0.5);
    // Axes that agree to a degree.
    expect(distance(port?.axis ?? [0, 0, 0], inlet.axis)).toBeLessThan(0.02);
    expect(saved.runs.at(-1)).toMatchObject({ a: { port: 'cam-cover-breather' }, b: { port: port?.id } });

    await undoAll(page);
    await expect(runRow(page, 'Breather, made here')).toBeHidden();
    await expect(runRow(page, 'Crankcase breather to catch tank')).toBeVisible();
    await page.keyboard.press('Control+s');
  });
}
