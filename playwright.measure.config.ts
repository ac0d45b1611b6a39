import { defineConfig } from '@playwright/test';
import gate from './playwright.config.ts';

/** As the browser tests, with a heap that can be asked for and swept: for measuring the window. */
export default defineConfig({
  ...gate,
  testDir: 'tests/bench',
  testMatch: 'window.bench.spec.ts',
  reporter: 'line',
  use: {
    ...gate.use,
    launchOptions: {
      ...gate.use?.launchOptions,
      args: [...(gate.use?.launchOptions?.args ?? []), '--js-flags=--expose-gc', '--enable-precise-memory-info'],
    },
  },
});
