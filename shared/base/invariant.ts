/** Stops on our own mistake, never on the user's. The message starts with the function's name. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(message);
}
