import { mkdirSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import type {} from '../../renderer/scene/ContextWatch.tsx';
import { test as opened } from '../e2e/window.ts';

/**
 * How the window answers, by Chromium's own clock: the first picture of the example bay, the longest wait for an input
 * while hoses are laid, papers drawn and a scan read, and memory after the example was opened many times. Not part of the
 * tests: `npm run measure:window` writes tests/bench/results/<machine>-window.csv. The picture is drawn by the processor here, which a graphics card is not.
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
  rows.push(['other work on the machine as this began, load over one minute', os.loadavg()[0] ?? 0, 'processes']);
  await isDrawn(page);
  await page.reload();
  await isDrawn(page);
  rows.push([
    'example bay read and drawn, from the start of the page',
    await page.evaluate(() => performance.now()),
    'ms',
  ]);
  const picture = await firstPicture(page);
  rows.push(['its first picture on the screen, from the start of the page', picture.seenMs, 'ms']);
  rows.push(['of that, waited for whoever draws it once all was asked', picture.waitedMs, 'ms']);
  await timeInputs(page);
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  const cancel = page.getByRole('button', { name: 'Cancel' });
  await expect(cancel).toBeVisible();
  await press(page, 12);
  told('while all runs are laid', await inputs(page));
  await expect(cancel).toBeHidden({ timeout: 600_000 });
  await page.keyboard.press('3');
  for (let i = 0; i < 12; i++) {
    await page.keyboard.press('j');
    await page.waitForTimeout(1500);
  }
  await page.waitForTimeout(500);
  told('with all runs laid', await inputs(page));
  await page.keyboard.press('5');
  const downloading = page.waitForEvent('download', { timeout: 120_000 });
  await page.getByRole('button', { name: 'Download build sheets' }).click();
  await inputs(page);
  await press(page, 6);
  told('while the papers are drawn', await inputs(page));
  await downloading;
  await expect(cancel).toBeHidden({ timeout: 60_000 });
  await dropScan(page);
  await inputs(page);
  await press(page, 6);
  told('while a scan of 2 million triangles is read', await inputs(page));
  await expect(page.getByRole('button', { name: 'Leave it' })).toBeVisible({ timeout: 120_000 });
  await page.getByRole('button', { name: 'Leave it' }).click();
  write();
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

/** When all commands of the first picture are carried out, and how much of that was waiting once they were given. */
function firstPicture(page: Page): Promise<{ seenMs: number; waitedMs: number }> {
  return page.evaluate(async () => {
    while ((window.__hosewright?.scene().framesDrawn ?? 0) === 0) await new Promise((look) => setTimeout(look, 4));
    const askedMs = performance.now();
    const gl = document.querySelector<HTMLCanvasElement>('.bay canvas')?.getContext('webgl2');
    // To read a pixel is to wait until all is drawn.
    gl?.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    return { seenMs: performance.now(), waitedMs: performance.now() - askedMs };
  });
}

/** Goes through steps, runs and units by keyboard, as fast as a hand does. */
async function press(page: Page, rounds: number): Promise<void> {
  for (let i = 0; i < rounds; i++) {
    for (const key of [String((i % 6) + 1), 'j', 'u']) await page.keyboard.press(key);
    await page.waitForTimeout(250);
  }
}

/** Drops a large scan on the window, made in the page itself: 100 MB of binary STL. */
async function dropScan(page: Page): Promise<void> {
  await page.evaluate((count) => {
    const view = new DataView(new ArrayBuffer(84 + 50 * count));
    view.setUint32(80, count, true);
    for (let i = 0; i < count; i++) {
      const [x, y] = [i % 1414, Math.floor(i / 1414)];
      const corners = [x, y, 0, x + 1, y, 0, x, y + 1, (i * 7) % 3];
      for (let k = 0; k < 9; k++) view.setFloat32(84 + 50 * i + 12 + 4 * k, corners[k] as number, true);
    }
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([view], 'large.stl'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, 2_000_000);
}

/** Opens the example again in the window as it is, from its folder, and waits until its own picture is drawn. */
async function reopen(page: Page): Promise<void> {
  const before = await page.evaluateHandle(() => window.__hosewright);
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await choosing).setFiles(HILLCLIMB);
  await page.waitForFunction(
    (old) => {
      const now = window.__hosewright;
      return now !== undefined && now !== old && now.scene().trianglesDrawn > 0;
    },
    before,
    { timeout: 60_000 },
  );
  await before.dispose();
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
