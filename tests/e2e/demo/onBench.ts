import { cp, mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { placePx } from '../window/smallRig.ts';
import { expect } from '../window.ts';

const HILLCLIMB = path.resolve(import.meta.dirname, '../../../models/bays/hillclimb');

/** ms. Every run of the example is really laid, on machines of every speed; this only ends a lay that hangs. */
export const LAYING_LIMIT_MS = 900_000;

/** A copy of the example bay that may be saved in place. */
export async function demoFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'hosewright-demo-'));
  await cp(HILLCLIMB, folder, { recursive: true });
  return folder;
}

export async function demoProject(): Promise<Project> {
  return JSON.parse(await readFile(path.join(HILLCLIMB, 'project.json'), 'utf8')) as Project;
}

/** A port of the example as it is modelled. */
export async function demoPort(id: string): Promise<Project['ports'][number]> {
  const port = (await demoProject()).ports.find((one) => one.id === id);
  if (port === undefined) throw new Error(`demoPort: the example has no port ${id}`);
  return port;
}

export const work = (page: Page): Locator => page.getByRole('region', { name: 'Work under way' });

export const runRow = (page: Page, name: string): Locator =>
  page.getByRole('list', { name: 'Runs' }).getByRole('button', { name });

export const goTo = (page: Page, step: string): Promise<void> =>
  page.getByRole('button', { name: step, exact: true }).click();

/** Waits until nothing is being worked on, however long the machine takes over a lay. */
export const idle = (page: Page): Promise<void> => expect(work(page)).toBeHidden({ timeout: LAYING_LIMIT_MS });

/** Takes every change back. */
export async function undoAll(page: Page): Promise<void> {
  const undo = page.getByRole('button', { name: 'Undo' });
  while (await undo.isEnabled()) await undo.click();
}

/** Moves the pointer onto a place of the bay. A pointer that rests tells a tool taken up after it nothing, so it comes from beside. */
export async function pointAt(page: Page, place: Vec3): Promise<void> {
  const [x, y] = await placePx(page, place);
  await page.mouse.move(x + 5, y + 5);
  await page.mouse.move(x, y);
}

export interface Probed {
  readonly trianglesDrawn: number;
  readonly framesDrawn: number;
  readonly atRest: boolean;
  readonly hoverArcLengthMm: number | null;
  readonly hoverPx: readonly [number, number] | null;
  readonly hoseMiddlePx: readonly [number, number] | null;
}

/** What the picture tells of itself. */
export async function probe(page: Page): Promise<Probed> {
  const told = await page.evaluate(() => window.__hosewright?.scene());
  if (told === undefined) throw new Error('probe: there is no picture');
  return told;
}

/** How many triangles the picture has once nothing is left to be drawn. */
export async function trianglesAtRest(page: Page): Promise<number> {
  const nextFrame = (): Promise<void> =>
    page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));
  for (;;) {
    const before = await probe(page);
    await nextFrame();
    const now = await probe(page);
    if (now.atRest && now.framesDrawn === before.framesDrawn && now.trianglesDrawn > 0) return now.trianglesDrawn;
  }
}
