import type { Cover } from './three/fitClear.ts';

/** What lies over the picture of the bay for good, marked so by the panels. */
export const OVER_BAY = '[data-over-bay]';

/** Where things lie over a canvas, as shares of it. */
export function coversOver(canvas: HTMLCanvasElement): Cover[] {
  const frame = canvas.getBoundingClientRect();
  if (frame.width === 0 || frame.height === 0) return [];
  return [...document.querySelectorAll(OVER_BAY)].map((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    return {
      left: (left - frame.left) / frame.width,
      right: (right - frame.left) / frame.width,
      top: (top - frame.top) / frame.height,
      bottom: (bottom - frame.top) / frame.height,
    };
  });
}
