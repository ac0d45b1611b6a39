import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { invariant } from '../../shared/base/invariant.ts';
import type { Bench } from './bench.ts';
import type { DocumentState } from './documentStore.ts';
import type { JobsState } from './jobsStore.ts';
import type { DrawerState } from './parts/drawerStore.ts';
import type { SessionState } from './sessionStore.ts';

/** The bench of the window, for its panels and its scene. */
export const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  invariant(bench !== null, 'useBench: used outside the window');
  return bench;
}

export function useDocument<T>(select: (state: DocumentState) => T): T {
  return useStore(useBench().document, select);
}

export function useSession<T>(select: (state: SessionState) => T): T {
  return useStore(useBench().session, select);
}

export function useJobs<T>(select: (state: JobsState) => T): T {
  return useStore(useBench().jobs, select);
}

export function useDrawer<T>(select: (state: DrawerState) => T): T {
  return useStore(useBench().drawer, select);
}
