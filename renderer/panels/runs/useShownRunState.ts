import type { OpenDocument } from '../../state/documentStore.ts';
import { runState, type ShownRunState } from '../../state/runState.ts';
import { useJobs } from '../../state/useBench.ts';

/** A run's state as it is shown now; null = no run is chosen. */
export function useShownRunState(open: OpenDocument | null, runId: string | null): ShownRunState | null {
  const found = useJobs(({ lain }) => runId !== null && lain[runId] !== undefined);
  if (open === null || runId === null) return null;
  return found ? 'found' : runState(open, runId);
}
