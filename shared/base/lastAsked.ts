/** The value of a name in a memory of those asked for last, made where it is not among them; the one asked for longest ago goes when there are more than `most`. */
export function lastAsked<T>(memory: Map<string, T>, name: string, most: number, make: () => T): T {
  const value = memory.has(name) ? (memory.get(name) as T) : make();
  memory.delete(name);
  memory.set(name, value);
  for (const oldest of [...memory.keys()].slice(0, -most)) memory.delete(oldest);
  return value;
}
