import type { End } from './schema.ts';

/** mm. How far the hose goes into an end, from the cut to the mark: as its table gives it, else from shoulder to mouth. */
export function insertionDepthMm(end: Pick<End, 'insertionDepthMm' | 'shoulderToMouthMm'>): number {
  return end.insertionDepthMm ?? end.shoulderToMouthMm;
}
