import { type RefObject, useEffect, useRef } from 'react';

/** A ref for a row that scrolls into sight when it is chosen, from wherever that was done. */
export function useShownWhen<E extends HTMLElement>(chosen: boolean): RefObject<E | null> {
  const row = useRef<E>(null);
  useEffect(() => {
    if (!chosen) return;
    // With the next picture of the page, which lays everything out anyway; here it would be laid out one time more.
    const frame = requestAnimationFrame(() => row.current?.scrollIntoView({ block: 'nearest' }));
    return () => cancelAnimationFrame(frame);
  }, [chosen]);
  return row;
}
