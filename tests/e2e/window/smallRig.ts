import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import type {} from '../../../renderer/scene/ContextWatch.tsx';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import { smallBay } from '../../electron/smallBay.ts';
import { test } from '../window.ts';

/** The mesh of the small rig: a floor plate from z -20 to -10 mm, x -100 to 700; a post in its middle to z 20. */
export function rigMesh(): Buffer {
  return Buffer.from(smallBay()['bay.stl'] as Uint8Array);
}

export const rig = test.extend<{ changes: Readonly<Record<string, unknown>>; folder: string }>({
  changes: [{}, { option: true }],
  folder: async ({ changes }, use) => {
    const folder = await mkdtemp(path.join(tmpdir(), 'hosewright-window-'));
    for (const [name, content] of Object.entries(smallBay(changes))) await writeFile(path.join(folder, name), content);
    await use(folder);
  },
});

/** Waits until the bay is drawn, and answers where a place of it is in the window. */
export async function placePx(page: Page, point: Vec3): Promise<readonly [number, number]> {
  await page.waitForFunction(() => (window.__hosewright?.scene().trianglesDrawn ?? 0) > 0);
  return page.evaluate((at) => window.__hosewright?.placePx(at) ?? [0, 0], point);
}

export async function clickPlace(page: Page, point: Vec3): Promise<void> {
  const [x, y] = await placePx(page, point);
  await page.mouse.move(x, y);
  await page.mouse.click(x, y);
}

/** Drops a file on the window, as from a folder. */
export async function dropFile(page: Page, name: string, bytes: Buffer): Promise<void> {
  await page.evaluate(
    ([file, base64]) => {
      const content = Uint8Array.from(atob(base64 as string), (c) => c.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], file as string));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, bytes.toString('base64')],
  );
}

export async function typeInto(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}
