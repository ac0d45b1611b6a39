import { useLayoutEffect, useState } from 'react';

/** Width of an element in px, kept up to date; 0 until it is on the page. */
export function useWidth(element: HTMLElement | null): number {
  const [widthPx, setWidthPx] = useState(0);
  useLayoutEffect(() => {
    if (element === null) return;
    setWidthPx(Math.floor(element.getBoundingClientRect().width));
    const watch = new ResizeObserver(([entry]) => setWidthPx(Math.floor(entry?.contentRect.width ?? 0)));
    watch.observe(element);
    return () => watch.disconnect();
  }, [element]);
  return widthPx;
}
