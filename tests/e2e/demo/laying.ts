import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from '../window.ts';
import { goTo, idle, LAYING_LIMIT_MS, probe, runRow, trianglesAtRest, undoAll, work } from './onBench.ts';
import type { SharedPage } from './sharedWindow.ts';

const FIRST = 'Pump to oil cooler';
/** Has two ways round things. */
const OTHER_WAYS = 'Coolant, radiator to pump';

const progressOf = (page: Page): Promise<number> =>
  page.evaluate(() => document.querySelector('progress')?.value ?? Number.NaN);

/** Waits until the work under way has come on, so that stopping it stops something. */
const isUnderWay = (page: Page): Promise<void> =>
  expect.poll(() => progressOf(page), { timeout: LAYING_LIMIT_MS }).toBeGreaterThan(0);

/** Step 3 of the job on the example: one run, all runs, other ways, other ends, by hand. */
export function laying(bench: SharedPage): void {
  test('a lay is stopped and leaves nothing, made and stays, and stopping all keeps it', async () => {
    test.setTimeout(LAYING_LIMIT_MS);
    const page = bench();
    await runRow(page, FIRST).click();
    await page.getByRole('button', { name: 'Lay this run' }).click();
    await expect(work(page)).toContainText('Laying this run');
    await isUnderWay(page);
    await work(page).getByRole('button', { name: 'Cancel' }).click();
    await expect(page.getByText('Laying this run: stopped')).toBeVisible({ timeout: 60_000 });
    await expect(runRow(page, FIRST)).toContainText('not laid');

    await page.getByRole('button', { name: 'Lay this run' }).click();
    await expect(runRow(page, FIRST)).toContainText(/laid clean.*\d mm/s, { timeout: LAYING_LIMIT_MS });
    const laid = await runRow(page, FIRST).textContent();
    await page.getByRole('button', { name: 'Lay all runs' }).click();
    await isUnderWay(page);
    await page.keyboard.press('Escape');
    await expect(page.getByText('Laying all runs: stopped')).toBeVisible({ timeout: 60_000 });
    expect(await runRow(page, FIRST).textContent()).toBe(laid);
  });

  test('all runs are laid by as many workers as there are cores, and printed', async () => {
    test.setTimeout(LAYING_LIMIT_MS + 120_000);
    const page = bench();
    await page.getByRole('button', { name: 'Lay all runs' }).click();
    const runs = page.getByRole('list', { name: 'Runs' });
    const found = runs.getByRole('button', { name: /found, not settled.*its length comes when the laying ends/ });
    await expect(found).not.toHaveCount(0, { timeout: LAYING_LIMIT_MS });
    await goTo(page, 'Papers');
    // The paper of the run that lies already is drawn meanwhile, by a worker of its own.
    const doing = (): number => page.workers().filter((worker) => worker.url().includes('jobs.worker')).length;
    await expect.poll(doing).toBe(2);
    const button = page.getByRole('button', { name: 'Download build sheets' });
    await expect(page.getByRole('button', { name: 'Lay all runs' })).toBeDisabled();
    await idle(page);
    await expect(found).toHaveCount(0);
    await expect(button).toBeEnabled();
    // Laid by as many workers as the machine runs at once, four at most; by the one that does the job where that is one.
    const cores = await page.evaluate(() => navigator.hardwareConcurrency);
    const crew = page.workers().filter((worker) => worker.url().includes('lays.worker'));
    expect(crew).toHaveLength(cores < 2 ? 0 : Math.min(4, cores));
    const downloading = page.waitForEvent('download', { timeout: 120_000 });
    await button.click();
    const download = await downloading;
    expect(download.suggestedFilename()).toMatch(/\.pdf$/);
    const bytes = await readFile(await download.path());
    expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  });

  test('another way round is seen, taken with a waypoint, and taken back', async () => {
    test.setTimeout(LAYING_LIMIT_MS);
    const page = bench();
    await runRow(page, OTHER_WAYS).click();
    const before = await runRow(page, OTHER_WAYS).textContent();
    const ways = page.getByRole('region', { name: 'Other ways round' });
    await ways.getByRole('button', { name: 'Look for other ways' }).click();
    await expect(ways.getByRole('listitem')).not.toHaveCount(0, { timeout: LAYING_LIMIT_MS });
    await page.keyboard.press('f');
    const alone = await trianglesAtRest(page);
    const show = ways.getByRole('button', { name: 'Show Way 2 in the bay' });
    await show.click();
    await expect(show).toHaveAttribute('aria-pressed', 'true');
    expect(await trianglesAtRest(page)).toBeGreaterThan(alone);
    await ways.getByRole('button', { name: 'Take Way 2' }).click();
    const held = page.getByRole('list', { name: 'What holds the hose, END A to END B' });
    await expect(held.getByText('Waypoint 1')).toBeVisible({ timeout: LAYING_LIMIT_MS });
    await idle(page);
    await expect.poll(() => runRow(page, OTHER_WAYS).textContent()).not.toBe(before);
    await undoAll(page);
    await expect(held).toBeHidden();
    await expect.poll(() => runRow(page, OTHER_WAYS).textContent()).toBe(before);
  });

  test('other ends are tried, a pair is put on, and taken back with its hose', async () => {
    test.setTimeout(LAYING_LIMIT_MS);
    const page = bench();
    await runRow(page, OTHER_WAYS).click();
    const before = await runRow(page, OTHER_WAYS).textContent();
    const trial = page.getByRole('region', { name: 'Other ends for this run' });
    await trial.getByRole('button', { name: 'Try other ends' }).click();
    await expect(trial).toContainText(/\d of 9 pairs lie clean/, { timeout: LAYING_LIMIT_MS });
    await trial.getByRole('button', { name: 'Use END A 45°, END B 45°' }).click();
    await idle(page);
    await expect(runRow(page, OTHER_WAYS)).toContainText(/\d mm/);
    await expect.poll(() => runRow(page, OTHER_WAYS).textContent()).not.toBe(before);
    await undoAll(page);
    await expect.poll(() => runRow(page, OTHER_WAYS).textContent()).toBe(before);
  });

  test('the hose is pulled, clamped, slid and locked by hand, and all of it taken back', async () => {
    test.setTimeout(LAYING_LIMIT_MS);
    const page = bench();
    await runRow(page, OTHER_WAYS).click();
    await page.keyboard.press('f');
    const before = await runRow(page, OTHER_WAYS).textContent();
    const held = page.getByRole('list', { name: 'What holds the hose, END A to END B' });
    const [x, y] = await middleInSight(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const step of [3, 6, 9]) await page.mouse.move(x, y - step);
    const slip = page.getByRole('complementary', { name: 'The hose in the hand' });
    await expect(slip.getByText('Cut', { exact: true })).toBeVisible({ timeout: LAYING_LIMIT_MS });
    await page.mouse.up();
    await expect(held.getByText('Waypoint 1')).toBeVisible({ timeout: LAYING_LIMIT_MS });
    await idle(page);

    // A clamp by the pointer, on the straight view, a fifth along; then slid by the keys.
    await page.getByRole('button', { name: /^Clamp/ }).click();
    const straight = page.getByRole('slider', { name: /^Place along/ });
    const cutMm = Number(await straight.getAttribute('aria-valuemax'));
    await pointAlong(page, cutMm / 5);
    await page.mouse.down();
    await page.mouse.up();
    const clamp = held.getByRole('listitem').filter({ hasText: 'Clamp 1' });
    await expect(clamp).toBeVisible();
    await idle(page);
    const place = async (): Promise<number> =>
      Number(/at ([\d.]+) mm/.exec(((await clamp.textContent()) ?? '').replace(/\s+/g, ' '))?.[1]);
    const first = await place();
    expect(Math.abs(first - cutMm / 5)).toBeLessThan(3);
    for (let i = 0; i < 5; i++) await page.keyboard.press('.');
    await idle(page);
    await expect.poll(async () => Math.round((await place()) - first)).toBe(5);

    // The last third of the hose is marked by keys and locked.
    await page.keyboard.press('g');
    await page.keyboard.press('g');
    await expect(page.getByRole('button', { name: 'Unlock stretch 1' })).toBeVisible({ timeout: LAYING_LIMIT_MS });
    await idle(page);

    await undoAll(page);
    await expect(held).toBeHidden();
    await expect(page.getByRole('button', { name: 'Unlock stretch 1' })).toBeHidden();
    await expect.poll(() => runRow(page, OTHER_WAYS).textContent()).toBe(before);
  });
}

/** Where the middle of the chosen hose is in the window, once it is flown to and seen. */
async function middleInSight(page: Page): Promise<readonly [number, number]> {
  const seen = async () => (await probe(page)).hoseMiddlePx;
  await expect.poll(seen).not.toBeNull();
  return (await seen()) ?? [0, 0];
}

/** Moves the pointer over the straight view until it stands by a place of the hose. */
export async function pointAlong(page: Page, arcLengthMm: number): Promise<void> {
  const straight = page.getByRole('slider', { name: /^Place along/ });
  const box = await straight.boundingBox();
  if (box === null) throw new Error('pointAlong: the straight view is not there');
  const at = async (px: number): Promise<number> => {
    await page.mouse.move(box.x + px, box.y + 64);
    return (await probe(page)).hoverArcLengthMm ?? Number.NaN;
  };
  // The scale is uniform: two readings on the hose tell it.
  const [p, q] = [box.width * 0.35, box.width * 0.4];
  const [a, b] = [await at(p), await at(q)];
  await at(p + ((arcLengthMm - a) * (q - p)) / (b - a));
}
