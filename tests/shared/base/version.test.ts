import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { SOLVER_VERSION } from '../../../shared/base/version.ts';

it('reports carry the version of the package', () => {
  const text = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8');
  expect(SOLVER_VERSION).toBe((JSON.parse(text) as { version: string }).version);
});
