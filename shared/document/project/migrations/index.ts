import type { Migration } from './migrate.ts';

/**
 * Every migration of the project file, in order: entry i turns version i + 1 into version i + 2. One file per
 * migration, named for what it does. Empty while there is only one version.
 */
export const MIGRATIONS: readonly Migration[] = [];
