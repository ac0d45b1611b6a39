import type { ClearanceField } from './problem.ts';

const memories = new WeakMap<ClearanceField, Map<string, unknown>>();

/**
 * What was once worked out of a clearance field under this name, made now if it was not: a run is searched several times over one
 * field. It lives as long as the field. What is made must depend on the field and the name alone.
 */
export function remembered<T>(field: ClearanceField, name: string, make: () => T): T {
  const memory = memories.get(field) ?? new Map<string, unknown>();
  memories.set(field, memory);
  if (!memory.has(name)) memory.set(name, make());
  return memory.get(name) as T;
}
