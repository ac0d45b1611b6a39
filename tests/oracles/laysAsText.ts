import type { Lay } from '../../shared/document/lay/schema.ts';

/** Lays as text, to the last bit of every number, without what was timed. */
export function laysAsText(lays: readonly Lay[]): string {
  return JSON.stringify(lays.map((lay) => ({ ...lay, timingsMs: {} })));
}
