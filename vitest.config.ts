import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/{shared,renderer,electron,models,realBays,stories}/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 60_000,
    maxWorkers: 2,
  },
});
