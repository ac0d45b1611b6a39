import { createStore } from 'zustand/vanilla';
import type { Project } from '../../shared/document/project/schema.ts';
import type { WayRound, WaysRound } from '../../shared/document/waysRound/schema.ts';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore } from './documentStore.ts';
import { putSupport } from './edits/supportEdits.ts';
import type { JobsStore } from './jobsStore.ts';
import { supportAt } from './supportPlaces.ts';

export interface WaysState {
  /** what was found, and the project it was found in */
  readonly found: { readonly ways: WaysRound; readonly from: Project } | null;
  /** number of the way that is drawn beside the hose; `null` = none */
  readonly shown: number | null;
}

interface WaysNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  readonly filesNow: () => { readonly files: ProjectFiles; readonly project: Project } | null;
  readonly settle: (run: string, along: WayRound['lay']['centreline']['points']) => Promise<void>;
}

/** The ways of the chosen run round things: looked for, drawn beside the hose, and one of them taken. */
export function createOnWays({ document, jobs, filesNow, settle }: WaysNeeds) {
  const store = createStore<WaysState>(() => ({ found: null, shown: null }));
  return {
    ...store,
    look: async (run: string): Promise<void> => {
      const now = filesNow();
      if (now === null) return;
      const report = document.getState().open?.report;
      const earlier = report === null || report === undefined ? {} : { earlier: report };
      const ways = await jobs.work('Looking for other ways round', 'waysRound', { ...now.files, run, ...earlier });
      if (ways !== null) store.setState({ found: { ways, from: now.project }, shown: null });
    },
    show: (shown: number | null): void => store.setState({ shown }),
    /** Leads the run that way: a waypoint where it differs most, one step back, and the hose laid along it. */
    take: async (number: number): Promise<void> => {
      const { found } = store.getState();
      const way = found?.ways.ways[number];
      if (found === null || way === undefined) return;
      const { run } = found.ways;
      const { waypoint } = way;
      store.setState({ shown: null });
      if (waypoint !== undefined)
        document.edit('way round', (project) => {
          const own = project.runs.find(({ id }) => id === run);
          if (own === undefined) return project;
          const { axis: _, ...support } = supportAt(own, 'waypoint', { point: waypoint, along: [1, 0, 0] });
          return putSupport(project, run, own.supports.length, support);
        });
      await settle(run, way.lay.centreline.points);
    },
    clear: (): void => store.setState({ found: null, shown: null }),
  };
}

export type OnWays = ReturnType<typeof createOnWays>;
