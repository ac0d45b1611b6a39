import type { Cover } from './three/fitClear.ts';

/** What lies over the picture of the bay for good, marked so by the panels. */
export const OVER_BAY = '[data-over-bay]';

/** Where things lie over a canvas, as shares of the size, px, that it will have with its next picture. */
export function coversOver(
  canvas: HTMLCanvasElement,
  size: { readonly width: number; readonly height: number },
): Cover[] {
  const { left: x, top: y } = canvas.getBoundingClientRect();
  if (size.width === 0 || size.height === 0) return [];
  return [...document.querySelectorAll(OVER_BAY)].map((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    return {
      left: (left - x) / size.width,
      right: (right - x) / size.width,
      top: (top - y) / size.height,
      bottom: (bottom - y) / size.height,
    };
  });
}
