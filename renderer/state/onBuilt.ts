import type { AsBuilt, Project } from '../../shared/document/project/schema.ts';
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
  return {
    layAsMade,
    /** States what was measured, one step back, and lays the hose so; undefined takes it away. */
    measured: (runId: string, built: AsBuilt | undefined): Promise<void> => {
      document.edit('hose as built', (project) => setAsBuilt(project, runId, built));
      return layAsMade(runId);
    },
  };
}

export type OnBuilt = ReturnType<typeof createOnBuilt>;
