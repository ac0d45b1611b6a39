import type { ResolvedRun } from '../../document/project/resolve.ts';

/** mm: the least bore of a run's hose and, where their table states it, of its two ends. Adapters state none. */
export function narrowestBore({ hose, a, b }: ResolvedRun): number {
  return Math.min(
    hose.insideDiameterMm,
    a.end.boreMm ?? Number.POSITIVE_INFINITY,
    b.end.boreMm ?? Number.POSITIVE_INFINITY,
  );
}
