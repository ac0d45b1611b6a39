import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './window.ts';

const RIG = path.resolve(import.meta.dirname, '../../models/bays/two-elbow-rig');
/** WCAG 2.2 AA and all that it builds on. */
const ASKED = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe has against the page as it is, in both themes, a line each. */
async function faultsOf(page: Page, screen: string): Promise<string[]> {
  const faults: string[] = [];
  for (const theme of ['light', 'dark']) {
    await page.evaluate((to) => {
      document.documentElement.dataset['theme'] = to;
    }, theme);
    const { violations } = await new AxeBuilder({ page }).withTags(ASKED).analyze();
    for (const { id, nodes } of violations)
      for (const { target, failureSummary } of nodes)
        faults.push(`${screen}, ${theme}: ${id} at ${target.join(' ')}: ${failureSummary?.split('\n')[1]?.trim()}`);
  }
  return faults;
}

test('the empty bench and the questions about a scan', async ({ opened: { page } }) => {
  const faults = await faultsOf(page, 'empty bench');
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'New bay from a scan' }).click();
  await (await choosing).setFiles(path.join(RIG, 'two-elbow-rig.glb'));
  for (const question of ['How large', 'Which way', 'How far', 'What lies']) {
    await expect(page.getByRole('heading', { name: question })).toBeVisible();
    faults.push(...(await faultsOf(page, question)));
    const next = page.getByRole('button', { name: 'Next' });
    if (await next.isVisible()) await next.click();
  }
  expect(faults).toEqual([]);
});

/** Opens whatever is folded away on the page. */
function unfold(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
  });
}

/** Screens of a laid run that a key opens, with the key that shuts them. */
const OPENED_BY_KEY = [
  ['a new port on its way', 'o', 'Escape'],
  ['a new run', 'r', 'Escape'],
  ['a support on its way', 'c', 'Delete'],
  ['a stretch marked', 'g', 'Escape'],
  ['heat', 'Shift+H', 'Shift+H'],
  ['heat just off', 'Shift+H', 'x'],
  ['seen through', 'x', 'x'],
  ['a bent rod', 'q', 'Escape'],
  ['from inside the hose', 'Shift+E', 'Escape'],
  ['drawer of parts', 'i', 'Escape'],
] as const;

/** Forms that a button of a step opens. */
const OPENED_BY_BUTTON = [
  ['1', 'New skin'],
  ['2', 'New port'],
  ['4', 'Pass it with a reason'],
] as const;

test.describe('with a bay on the bench', () => {
  test.use({ project: RIG });

  test('every step, before and after laying, all unfolded, the drawer, and the list of keys', async ({
    opened: { page },
  }) => {
    test.setTimeout(600_000);
    await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled();
    const faults: string[] = [];
    const look = async (screen: string): Promise<void> => void faults.push(...(await faultsOf(page, screen)));
    const steps = async (when: string): Promise<void> => {
      for (const [i, step] of ['bay', 'ports', 'runs', 'checks', 'papers', 'bench'].entries()) {
        await page.keyboard.press(String(i + 1));
        // A paper drawn is another screen than a paper being drawn.
        if (step === 'papers' && when === 'laid') await expect(page.locator('.paper-page').first()).toBeVisible();
        await unfold(page);
        await look(`${step}, ${when}`);
      }
    };
    await steps('not laid');
    await page.keyboard.press('3');
    await page.getByRole('button', { name: 'Lay this run' }).click();
    await expect(page.getByRole('button', { name: 'Cancel' })).toBeHidden({ timeout: 120_000 });
    await steps('laid');
    await page.keyboard.press('Shift+X');
    await look('cut open');
    await page.keyboard.press('Shift+M');
    await look('measuring');
    await page.keyboard.press('Escape');
    for (const [screen, open, shut] of OPENED_BY_KEY) {
      await page.keyboard.press(open);
      await unfold(page);
      await look(screen);
      await page.keyboard.press(shut);
    }
    await page.keyboard.press('5');
    await page.getByText('Tags', { exact: true }).first().click();
    await expect(page.getByRole('img', { name: /^Tags, page 1/ })).toBeVisible();
    await look('tags');
    for (const [step, button] of OPENED_BY_BUTTON) {
      await page.keyboard.press(step);
      await page.getByRole('button', { name: button }).first().click();
      await look(button);
    }
    await page.keyboard.press('Shift+O');
    await look('opened lately');
    await page.keyboard.press('Escape');
    await page.keyboard.press('?');
    await look('list of keys');
    expect(faults).toEqual([]);
  });
});

/** px. WCAG 2.5.5, target size (enhanced): 44 by 44. */
const LEAST_TARGET_PX = 44;

/** What can be pressed on the page and is too small for a glove, in words. A tick counts with the label it is in. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const pressed = document.querySelectorAll('button, select, summary, input, [role="slider"]');
    return [...pressed].flatMap((element) => {
      const ticked = element.matches('input[type="radio"], input[type="checkbox"]');
      const box = ((ticked && element.closest('label')) || element).getBoundingClientRect();
      if (box.width === 0 || box.height === 0 || !element.checkVisibility({ visibilityProperty: true })) return [];
      if (box.width >= least && box.height >= least) return [];
      const name = element.getAttribute('aria-label') ?? element.textContent ?? '';
      return [
        `${element.tagName} ${element.className} “${name}”: ${Math.round(box.width)} x ${Math.round(box.height)}`,
      ];
    });
  }, LEAST_TARGET_PX);
}

test.describe('with gloves on', () => {
  test.use({ project: RIG });

  test('everything to be pressed is at least 44 px', async ({ opened: { page } }) => {
    await expect(page.getByRole('button', { name: 'Lay this run' })).toBeEnabled();
    await page.keyboard.press('Shift+G');
    await page.getByRole('button', { name: 'Lay this run' }).click();
    await expect(page.getByRole('button', { name: 'Cancel' })).toBeHidden({ timeout: 120_000 });
    const small: string[] = [];
    for (const [i, step] of ['bay', 'ports', 'runs', 'checks', 'papers', 'bench'].entries()) {
      await page.keyboard.press(String(i + 1));
      await unfold(page);
      small.push(...(await smallTargets(page)).map((words) => `${step}: ${words}`));
    }
    await page.keyboard.press('Shift+X');
    small.push(...(await smallTargets(page)).map((words) => `cut open: ${words}`));
    await page.keyboard.press('Escape');
    for (const [screen, key] of [
      ['drawer', 'i'],
      ['keys', '?'],
    ] as const) {
      await page.keyboard.press(key);
      small.push(...(await smallTargets(page)).map((words) => `${screen}: ${words}`));
      await page.keyboard.press('Escape');
    }
    expect([...new Set(small)]).toEqual([]);
  });
});
