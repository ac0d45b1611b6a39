import { mkdirSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import { test as opened } from '../e2e/window.ts';

/**
 * How the window answers, by Chromium's own clock: the first picture of the example bay, the longest wait for an input
 * while hoses are laid, and memory after the example was opened many times. Not part of the tests: `npm run measure:window`
 * writes tests/bench/results/<machine>-window.csv. The picture is drawn by the processor here, which a graphics card is not.
 */
opened.skip(process.env['HOSEWRIGHT_MEASURE'] === undefined, 'measures only when asked to');

const HILLCLIMB = path.resolve(import.meta.dirname, '../../models/bays/hillclimb');
const REOPENED = 50;
type Row = readonly [measure: string, value: number, unit: string];
const rows: Row[] = [];

interface Timed {
  readonly workMs: number;
  readonly pictureMs: number;
}

function told(when: string, timed: readonly Timed[]): void {
  rows.push([`longest work for an input ${when}`, Math.max(0, ...timed.map(({ workMs }) => workMs)), 'ms']);
  rows.push([
    `longest time to the next picture ${when}`,
    Math.max(0, ...timed.map(({ pictureMs }) => pictureMs)),
    'ms',
  ]);
}

/** Inputs that Chromium timed since it was last asked: what the window's own work took of each, and the time to the next picture, ms. */
function inputs(page: Page): Promise<Timed[]> {
  return page.evaluate(() => {
    return ((window as unknown as { inputs?: Timed[] }).inputs ?? []).splice(0);
  });
}

async function timeInputs(page: Page): Promise<void> {
  await page.evaluate(() => {
    const kept: Timed[] = [];
    (window as unknown as { inputs: typeof kept }).inputs = kept;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as PerformanceEventTiming[])
        kept.push({ workMs: entry.processingEnd - entry.processingStart, pictureMs: entry.duration });
    }).observe({ type: 'event', durationThreshold: 16, buffered: false } as PerformanceObserverInit);
  });
}

function heapMb(page: Page): Promise<number> {
  return page.evaluate(() => {
    (globalThis as unknown as { gc?: () => void }).gc?.();
    return (performance as unknown as { memory: { usedJSHeapSize: number } }).memory.usedJSHeapSize / 2 ** 20;
  });
}

const isDrawn = (page: Page) =>
  expect(page.getByRole('button', { name: 'Lay all runs' })).toBeEnabled({ timeout: 60_000 });

opened.use({ project: HILLCLIMB });

opened('first picture, answers while laying, memory', async ({ opened: { page } }) => {
  opened.setTimeout(1_800_000);
  await isDrawn(page);
  await page.reload();
  await isDrawn(page);
  rows.push([
    'example bay read and drawn, from the start of the page',
    await page.evaluate(() => performance.now()),
    'ms',
  ]);
  await timeInputs(page);
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  const cancel = page.getByRole('button', { name: 'Cancel' });
  await expect(cancel).toBeVisible();
  for (let i = 0; i < 12; i++) {
    for (const key of [String((i % 6) + 1), 'j', 'u']) await page.keyboard.press(key);
    await page.waitForTimeout(250);
  }
  told('while all runs are laid', await inputs(page));
  await expect(cancel).toBeHidden({ timeout: 600_000 });
  await page.keyboard.press('3');
  for (let i = 0; i < 12; i++) {
    await page.keyboard.press('j');
    await page.waitForTimeout(1500);
  }
  await page.waitForTimeout(500);
  told('with all runs laid', await inputs(page));
  await reopen(page);
  const atFirst = await heapMb(page);
  for (let i = 0; i < REOPENED; i++) await reopen(page);
  rows.push([
    `memory after the example was opened ${REOPENED} times more, over before`,
    (await heapMb(page)) / atFirst,
    'ratio',
  ]);
  write();
});

/** Opens the example again in the window as it is, from its folder. */
async function reopen(page: Page): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await choosing).setFiles(HILLCLIMB);
  await expect(page.getByRole('button', { name: 'Lay all runs' }))
    .toBeDisabled({ timeout: 60_000 })
    .catch(() => undefined);
  await isDrawn(page);
}

function write(): void {
  const cpus = os.cpus();
  const machine = `${cpus.length} x ${cpus[0]?.model.trim()}, ${Math.round(os.totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
  const name = machine
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const folder = path.resolve(import.meta.dirname, 'results');
  mkdirSync(folder, { recursive: true });
  const lines = rows.map(([measure, value, unit]) => `"${measure}",${value.toFixed(3)},${unit}`);
  writeFileSync(
    path.join(folder, `${name}-window.csv`),
    `# ${machine}; Chromium headless, drawn by the processor\nmeasure,value,unit\n${lines.join('\n')}\n`,
  );
}
