import { useEffect, useMemo } from 'react';

/** A GPU object made for a component, made anew when `inputs` change, and given back when it is no longer drawn. */
export function useDisposed<T extends { dispose(): void }>(make: () => T, inputs: readonly unknown[]): T {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the object is made from
  const made = useMemo(make, inputs);
  useEffect(() => () => made.dispose(), [made]);
  return made;
}
