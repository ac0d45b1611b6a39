import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { pickFiles } from '../../../renderer/desktop/browserDesktop.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const SCAN = { name: 'bay.stl' };

/** A page whose dialogs do, one after the other, what is told: refused at once, closed by hand, or answered. */
function page(...dialogs: readonly ('refused' | 'closed' | 'answered')[]) {
  const shown: string[] = [];
  const createElement = () => {
    const heard = new Map<string, () => void>();
    const input = {
      files: [SCAN],
      addEventListener: (name: string, act: () => void) => void heard.set(name, act),
      click: () => {
        const does = dialogs[Math.min(shown.length, dialogs.length - 1)] ?? 'closed';
        shown.push(does);
        setTimeout(() => heard.get(does === 'answered' ? 'change' : 'cancel')?.(), does === 'refused' ? 3 : 900);
      },
    };
    return input;
  };
  const window = { document: { createElement }, performance, setTimeout } as unknown as Window;
  return { window, shown };
}

async function picked(window: Window) {
  const files = pickFiles(window, { folder: true });
  await vi.runAllTimersAsync();
  return files;
}

it('asks again for a dialog that the browser refused, and takes what is then chosen', async () => {
  const { window, shown } = page('refused', 'refused', 'answered');
  expect(await picked(window)).toEqual([SCAN]);
  expect(shown).toEqual(['refused', 'refused', 'answered']);
});

it('takes a dialog that the user closed as closed', async () => {
  const { window, shown } = page('closed', 'answered');
  expect(await picked(window)).toBeNull();
  expect(shown).toEqual(['closed']);
});

it('gives up where the browser refuses every time', async () => {
  const { window, shown } = page('refused');
  expect(await picked(window)).toBeNull();
  expect(shown).toHaveLength(12);
});
