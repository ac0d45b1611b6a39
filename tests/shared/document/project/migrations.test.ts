import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { MIGRATIONS } from '../../../../shared/document/project/migrations/index.ts';
import { parseProject } from '../../../../shared/document/project/parseProject.ts';
import { PROJECT_VERSION } from '../../../../shared/document/project/schema.ts';

const VERSIONS = Array.from({ length: PROJECT_VERSION }, (_, i) => i + 1);

function fixture(version: number): string {
  return readFileSync(fileURLToPath(new URL(`../../../fixtures/projects/v${version}.json`, import.meta.url)), 'utf8');
}

it('has one migration for each step to the present version, without gaps', () => {
  expect(MIGRATIONS.map((m) => m.from)).toEqual(VERSIONS.slice(0, -1));
});

it.each(VERSIONS)('opens the file kept from version %i, so that every migration runs at least once', (version) => {
  const text = fixture(version);
  expect(JSON.parse(text).version).toBe(version);
  const read = parseProject(text);
  expect(read).toMatchObject({ ok: true, value: { version: PROJECT_VERSION } });
});
