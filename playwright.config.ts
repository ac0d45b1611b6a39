import { defineConfig } from '@playwright/test';

/** Drives the built window in Chromium. WebGL is drawn by the processor, so the tests need no graphics card. */
export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: '.tmp/playwright',
  snapshotPathTemplate: '{testDir}/visual/pictures/{arg}{ext}',
  workers: 1,
  timeout: 180_000,
  expect: { timeout: 30_000 },
  forbidOnly: process.env['CI'] !== undefined,
  reporter: [['line'], ['json', { outputFile: '.tmp/playwright.json' }]],
  use: {
    viewport: { width: 1280, height: 800 },
    acceptDownloads: true,
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
      ],
    },
  },
});
