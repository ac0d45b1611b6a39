import type { AsBuilt, Project } from '../../shared/document/project/schema.ts';
import { withMeasured } from '../../shared/document/proof/reclocked.ts';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore } from './documentStore.ts';
import { setAsBuilt } from './edits/runEdits.ts';
import type { JobsStore } from './jobsStore.ts';
import { isStale, layOf } from './runState.ts';

interface BuiltNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  /** the project as it stands, with its files, for a job */
  filesNow(): { readonly files: ProjectFiles; readonly project: Project } | null;
}

/** What the bench measured of a hose that was made. */
export function createOnBuilt({ document, jobs, filesNow }: BuiltNeeds) {
  /** Lays the run's hose as measured, where there is a plan to hold it against. */
  const layAsMade = async (runId: string): Promise<void> => {
    const { open } = document.getState();
    const now = filesNow();
    const lay = open === null ? undefined : layOf(open, runId);
    if (open === null || open.report === null || now === null || lay?.outcome !== 'laid' || isStale(open, runId))
      return;
    const input = { ...now.files, run: runId, report: open.report };
    const report = await jobs.work('Laying the hose as made', 'builtHose', input);
    // No lay became newer by this: what each was laid from stays.
    if (report !== null) document.reported(report, now.project, []);
  };
  /** States what was measured, one step back, and lays the hose so; undefined takes it away. */
  const measured = (runId: string, built: AsBuilt | undefined): Promise<void> => {
    document.edit('hose as built', (project) => setAsBuilt(project, runId, built));
    return layAsMade(runId);
  };
  return {
    layAsMade,
    measured,
    /** Writes down one thing more that was measured, or why it cannot be: a hose that was proof-tested keeps its clock. */
    write: async (runId: string, change: Partial<AsBuilt>): Promise<void> => {
      const { open } = document.getState();
      const run = open?.history.present.runs.find(({ id }) => id === runId);
      if (open === null || run === undefined) return;
      const clock = layOf(open, runId)?.clock;
      const made = withMeasured(run.asBuilt, change, clock?.kind === 'angle' ? clock.deg : undefined);
      if ('refused' in made)
        return jobs.tell('Not written down', [made.refused, 'What was written down before stays as it is.']);
      await measured(runId, made.built);
    },
    /** Takes back what was written down of these, and of nothing else. */
    takeBack: (runId: string, ...what: readonly (keyof AsBuilt)[]): Promise<void> => {
      const built = document.getState().open?.history.present.runs.find(({ id }) => id === runId)?.asBuilt;
      const others: AsBuilt = { ...built };
      for (const key of what) delete others[key];
      return measured(runId, Object.keys(others).some((key) => key !== 'note') ? others : undefined);
    },
  };
}

export type OnBuilt = ReturnType<typeof createOnBuilt>;
