import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { canReadPdf, pdfPages } from '../../shared/sheets/readPdf.ts';
import { expect, test } from '../window.ts';
import { pointAlong } from './laying.ts';
import { goTo, idle, LAYING_LIMIT_MS, probe, runRow, trianglesAtRest, undoAll } from './onBench.ts';
import type { SharedPage } from './sharedWindow.ts';

const RUN = 'Oil cooler to filter head';
const REASON = 'Sheet of aluminium between, on this car';
/** px. What was found lies on the hose's skin or on its end, not on its centreline: some 40 mm at the scale it is flown to. */
const NEAR_PX = 60;
/** Worst first. */
const SEVERITIES = ['Do not cut', 'Decide first', 'Know it'];

/** Where the middle of the picture is in the window, px. */
async function pictureMiddle(page: Page): Promise<readonly [number, number]> {
  const box = await page.locator('.bay canvas').first().boundingBox();
  if (box === null) throw new Error('pictureMiddle: there is no picture');
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** px between where the place pointed at is drawn and the middle of the picture. */
async function offMiddlePx(page: Page): Promise<number> {
  const [x, y] = await pictureMiddle(page);
  const [px, py] = (await probe(page)).hoverPx ?? [Number.NaN, Number.NaN];
  return Math.hypot(px - x, py - y);
}

/** Steps 4 to 6 of the job on the example, once its runs are laid: findings, straight view, movement, heat, papers. */
export function looking(bench: SharedPage): void {
  test('findings stand worst first, and each is flown to and marked on its hose', async () => {
    const page = bench();
    await goTo(page, 'Checks');
    const rows = page.getByRole('article', { name: 'Checks' }).locator('.finding');
    const words = await rows.locator('.finding-word').allTextContents();
    const ranks = words.map((word) => SEVERITIES.findIndex((severity) => word.startsWith(severity)));
    expect(ranks.length).toBeGreaterThan(5);
    expect(ranks).not.toContain(-1);
    expect(ranks).toEqual([...ranks].sort((p, q) => p - q));
    expect(ranks[0]).toBe(0);
    const straight = page.getByRole('slider', { name: /^Place along/ });
    for (const row of (await rows.all()).slice(0, 5)) {
      await row.click();
      await expect(row).toHaveAttribute('aria-current', 'true');
      const { hoverArcLengthMm } = await probe(page);
      if (hoverArcLengthMm === null) continue;
      await expect(straight).toHaveAttribute('aria-valuenow', hoverArcLengthMm.toFixed(0));
      await expect.poll(() => offMiddlePx(page)).toBeLessThan(NEAR_PX);
    }
    // By keyboard: the next one, whatever its run.
    await page.keyboard.press('n');
    await expect(rows.nth(5)).toHaveAttribute('aria-current', 'true');
  });

  test('a place on the straight view is marked in the bay, and one in the bay on the straight view', async () => {
    const page = bench();
    await runRow(page, RUN).click();
    await page.keyboard.press('f');
    const straight = page.getByRole('slider', { name: /^Place along/ });
    const cutMm = Number(await straight.getAttribute('aria-valuemax'));
    await pointAlong(page, cutMm / 2);
    await expect(straight).toHaveAttribute('aria-valuetext', /mm from shoulder A/);
    const { hoverPx, hoseMiddlePx } = await probe(page);
    const [x, y] = hoseMiddlePx ?? [Number.NaN, Number.NaN];
    expect(Math.hypot((hoverPx?.[0] ?? Number.NaN) - x, (hoverPx?.[1] ?? Number.NaN) - y)).toBeLessThan(3);

    await goTo(page, 'Runs');
    await page.mouse.move(x + 6, y + 6);
    await page.mouse.move(x, y);
    await expect
      .poll(async () => Math.abs(Number(await straight.getAttribute('aria-valuenow')) - cutMm / 2))
      .toBeLessThan(25);
    await page.mouse.move(20, 20);
    await straight.focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
    await expect(straight).toHaveAttribute('aria-valuenow', '30');
    expect((await probe(page)).hoverArcLengthMm).toBe(30);
  });

  test('the engine rocks by a slider, with ghosts of the hoses; the eye rides along inside one', async () => {
    const page = bench();
    await runRow(page, RUN).click();
    const moves = page.getByRole('region', { name: 'Shown as it moves' });
    const rock = moves.getByRole('slider', { name: /at rest/ });
    const atRest = await trianglesAtRest(page);
    await rock.focus();
    await page.keyboard.press('ArrowRight');
    await expect(moves).toContainText(/extreme 1 of \d/);
    const named = await moves.locator('b').first().textContent();
    expect(named).not.toBe('at rest');
    const withGhosts = await trianglesAtRest(page);
    expect(withGhosts).toBeGreaterThan(atRest);
    await page.keyboard.press('Escape');
    await expect(moves).toContainText('as it stands');
    expect(await trianglesAtRest(page)).toBe(atRest);

    const outside = (await probe(page)).hoseMiddlePx;
    await moves.getByRole('button', { name: 'Look along from inside' }).click();
    const ride = moves.getByRole('slider', { name: 'Along the hose from END A to END B' });
    await ride.focus();
    await page.keyboard.press('PageUp');
    const at = Number(await ride.inputValue());
    expect(at).toBeGreaterThan(0);
    await expect.poll(async () => (await probe(page)).hoverArcLengthMm).toBe(at);
    await expect.poll(async () => (await probe(page)).hoseMiddlePx).not.toEqual(outside);
    await page.keyboard.press('Escape');
    await expect(ride).toBeHidden();
    await expect
      .poll(async () => (await probe(page)).hoseMiddlePx?.map((v) => Math.round(v)))
      .toEqual(outside?.map((v) => Math.round(v)));
  });

  test('the bay is coloured by heat, running and just off, beside what the colours stand for', async () => {
    const page = bench();
    const bay = page.locator('.bay canvas').first();
    await page.mouse.move(20, 20);
    await trianglesAtRest(page);
    const plain = await bay.screenshot();
    const legend = page.getByRole('figure');
    await page.getByRole('button', { name: 'Heat', exact: true }).click();
    await expect(legend).toContainText('Outside of each hose, running: an estimate');
    for (const tick of ['20 °C', '260 °C']) await expect(legend).toContainText(tick);
    await trianglesAtRest(page);
    expect((await bay.screenshot()).equals(plain)).toBe(false);
    await page.getByRole('button', { name: 'Heat: running' }).click();
    await expect(legend).toContainText('engine just off');
    await page.getByRole('button', { name: 'Heat: just off' }).click();
    await expect(legend).toBeHidden();
    await expect(page.getByRole('list', { name: 'Skins' }).first()).toContainText('hot');
  });

  test('a finding is passed by a limit of its own with a reason, which the paper prints, and is taken back', async () => {
    test.setTimeout(LAYING_LIMIT_MS);
    const page = bench();
    await runRow(page, RUN).click();
    const card = page.getByRole('article', { name: `Run: ${RUN}` });
    await card.getByRole('button', { name: 'Pass it with a reason' }).first().click();
    const pass = card.getByRole('button', { name: 'Pass it with this reason' });
    await expect(pass).toBeDisabled();
    await card.getByRole('textbox', { name: 'Reason, printed on every paper' }).fill(REASON);
    await card.getByRole('textbox', { name: 'Reason, printed on every paper' }).press('Enter');
    await pass.click();
    await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
    await idle(page);
    await goTo(page, 'Checks');
    await expect(page.getByRole('region', { name: 'Limits set by hand' })).toContainText(REASON);
    await goTo(page, 'Papers');
    await expect(page.getByRole('img', { name: new RegExp(`^${RUN}, page 1`) })).toBeVisible();
    const downloading = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Download build sheets' }).click();
    const bytes = await readFile(await (await downloading).path());
    if (canReadPdf) expect(pdfPages(bytes).join(' ')).toContain(REASON);
    await undoAll(page);
    await goTo(page, 'Checks');
    await expect(page.getByRole('article', { name: 'Checks' })).not.toContainText(REASON);
  });
}
