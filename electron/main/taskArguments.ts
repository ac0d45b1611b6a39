import { isContainedPath } from '../../shared/document/project/namedPaths.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';

/** What a page may send at most in one task; far above any project, far below what would stop the machine. */
const MAX_FILES = 10_000;
const MAX_TEXT_LENGTH = 32 * 1024 * 1024;

// Our own window never sends anything else, so what does not fit is an attack or a bug: it throws.

export function asText(value: unknown): string {
  if (typeof value !== 'string' || value.length > MAX_TEXT_LENGTH) throw new TypeError('task: expected a text');
  return value;
}

export function asBytes(value: unknown): Uint8Array {
  if (!(value instanceof Uint8Array)) throw new TypeError('task: expected bytes');
  return value;
}

/** A name to propose in a dialog: one part, no folder. */
export function asPlainName(value: unknown): string {
  if (typeof value !== 'string' || value.includes('/') || !isContainedPath(value)) {
    throw new TypeError('task: expected a plain file name');
  }
  return value;
}

export function asNamedFiles(value: unknown): NamedFile[] {
  if (!Array.isArray(value) || value.length > MAX_FILES) throw new TypeError('task: expected a list of files');
  return value.map((file: unknown) => {
    const { path, bytes } = (file ?? {}) as Record<string, unknown>;
    if (typeof path !== 'string' || !isContainedPath(path)) throw new TypeError('task: expected a contained path');
    return { path, bytes: asBytes(bytes) };
  });
}
