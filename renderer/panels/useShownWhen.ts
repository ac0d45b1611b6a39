import { type RefObject, useEffect, useRef } from 'react';

/** A ref for a row that scrolls into sight when it is chosen, from wherever that was done. */
export function useShownWhen<E extends HTMLElement>(chosen: boolean): RefObject<E | null> {
  const row = useRef<E>(null);
  useEffect(() => {
    if (chosen) row.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  return row;
}
