import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/{base,shared,renderer,electron,models}/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 60_000,
    maxWorkers: 2,
  },
});
