import path from 'node:path';
import type { Page } from '@playwright/test';
import { demoFolder, idle, LAYING_LIMIT_MS, probe, runRow, trianglesAtRest } from './demo/onBench.ts';
import { expect, test } from './window.ts';

test.skip(
  process.env['HOSEWRIGHT_STATES'] === undefined,
  'takes a picture of every state, into .tmp/states, when asked to',
);
test.use({ contextOptions: { reducedMotion: 'reduce' } });

const STEPS = ['bay', 'ports', 'runs', 'checks', 'papers', 'bench'] as const;

/** Looks that the picture is not drawn anew any more; a picture that waits for the graphics is not at rest yet. */
const STILL_LOOKS = 4;
const LOOK_MS = 150;

async function atRest(page: Page): Promise<void> {
  for (let still = 0, before = -1; still < STILL_LOOKS; ) {
    await trianglesAtRest(page);
    const { framesDrawn } = await probe(page);
    still = framesDrawn === before ? still + 1 : 0;
    before = framesDrawn;
    await page.waitForTimeout(LOOK_MS);
  }
}

/** Takes the window as it is, in both themes, once nothing is left to be drawn. */
async function take(page: Page, name: string): Promise<void> {
  for (const theme of ['light', 'dark']) {
    const drawn = await page.evaluate(() => window.__hosewright !== undefined);
    if (drawn) await atRest(page);
    await page.screenshot({ path: `.tmp/states/${name}-${theme}.png` });
    await page.keyboard.press('t');
  }
}

/** The questions about a scan, which is then left. */
async function takeQuestions(page: Page): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'New bay from a scan' }).click();
  await (await choosing).setFiles(path.join(await demoFolder(), 'hillclimb-bay.glb'));
  for (const [question, heading] of QUESTIONS) {
    await expect(page.getByRole('heading', { name: heading })).toBeVisible({ timeout: 60_000 });
    await take(page, `question-${question}`);
    const next = page.getByRole('button', { name: 'Next' });
    if (await next.isVisible()) await next.click();
  }
  for (let i = 1; i < QUESTIONS.length; i++) await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Leave it' }).click();
}

const QUESTIONS = [
  ['size', 'How large is it?'],
  ['up', 'Which way is up?'],
  ['off', 'How far may the scan be off?'],
  ['drawer', 'What lies in the drawer?'],
] as const;

async function takeSteps(page: Page, when: string): Promise<void> {
  for (const [i, step] of STEPS.entries()) {
    await page.keyboard.press(String(i + 1));
    if (step === 'papers' && when === 'laid') await expect(page.locator('.paper-page').first()).toBeVisible();
    await take(page, `${when}-${i + 1}-${step}`);
  }
  await page.keyboard.press('3');
}

/** What is opened and shut by the same key. */
async function takeToggled(page: Page, name: string, key: string, shut = key): Promise<void> {
  await page.keyboard.press(key);
  await take(page, name);
  await page.keyboard.press(shut);
}

test('every state of the window, in both themes', async ({ opened: { page } }) => {
  test.setTimeout(LAYING_LIMIT_MS);
  await expect(page.getByRole('button', { name: 'Open the example bay' })).toBeVisible();
  await take(page, 'empty');
  await takeQuestions(page);
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await choosing).setFiles(await demoFolder());
  await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled({ timeout: 60_000 });
  await takeSteps(page, 'not-laid');
  await page.getByRole('button', { name: 'Lay all runs' }).click();
  await take(page, 'laying');
  await idle(page);
  await takeSteps(page, 'laid');
  await runRow(page, 'Turbo oil drain').click();
  await take(page, 'laid-stop');
  await page.keyboard.press('n');
  await take(page, 'finding');
  await page.keyboard.press('f');
  await page.keyboard.press('Shift+H');
  await take(page, 'heat-running');
  await page.keyboard.press('Shift+H');
  await takeToggled(page, 'heat-soak', 'x');
  await page.keyboard.press('Shift+H');
  await takeToggled(page, 'rock', ']', '[');
  await takeToggled(page, 'eye', 'Shift+E');
  await takeToggled(page, 'cut-open', 'Shift+X', 'Escape');
  await takeToggled(page, 'measure', 'Shift+M', 'Escape');
  await takeToggled(page, 'new-run', 'r', 'Escape');
  await takeToggled(page, 'parts', 'i', 'Escape');
  await takeToggled(page, 'keys', '?', 'Escape');
  await takeToggled(page, 'inches', 'u');
  await takeToggled(page, 'gloves', 'Shift+G');
  await page.keyboard.press('5');
  await page.getByText('Tags', { exact: true }).first().click();
  await expect(page.getByRole('img', { name: /^Tags, page 1/ })).toBeVisible();
  await take(page, 'tags');
  await page.keyboard.press('3');
  await page.setViewportSize({ width: 1280, height: 720 });
  await take(page, 'short');
  await page.setViewportSize({ width: 900, height: 700 });
  await take(page, 'narrow');
});
