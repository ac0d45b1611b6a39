import { createStore } from 'zustand/vanilla';
import type { Finding } from '../../shared/document/lay/schema.ts';
import { applyMend } from '../../shared/document/mends/applyMend.ts';
import type { Mends } from '../../shared/document/mends/schema.ts';
import { takenMend } from '../../shared/document/mends/takenMend.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore } from './documentStore.ts';
import type { JobsStore } from './jobsStore.ts';

export interface FoundMends {
  readonly mends: Mends;
  /** the one finding that is to be mended; absent = all of the run */
  readonly of?: Finding;
  /** the project they were tried on, and its findings */
  readonly from: Project;
  readonly before: readonly Finding[];
}

export interface MendsState {
  readonly found: FoundMends | null;
  /** number of the answer that is drawn beside the hose; `null` = none */
  readonly shown: number | null;
}

interface MendsNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  readonly filesNow: () => { readonly files: ProjectFiles; readonly project: Project } | null;
}

/** What would mend a run: tried by laying it so, drawn beside the hose, and one of them made. */
export function createOnMends({ document, jobs, filesNow }: MendsNeeds) {
  const store = createStore<MendsState>(() => ({ found: null, shown: null }));

  /** Tries what would mend one finding, or all of a run. */
  const look = async (run: string, of?: Finding): Promise<void> => {
    const now = filesNow();
    const report = document.getState().open?.report;
    if (now === null || report === null || report === undefined) return;
    const checks = of === undefined ? {} : { checks: [of.check] };
    const mends = await jobs.work('Trying what would mend it', 'tryMends', { ...now.files, run, report, ...checks });
    if (mends === null) return;
    const found = { mends, from: now.project, before: report.findings, ...(of === undefined ? {} : { of }) };
    store.setState({ found, shown: null });
  };

  /** Makes one answer, one step back; the lay that it was tried with is the run's lay from then on. */
  const make = async (number: number): Promise<void> => {
    const { found } = store.getState();
    const { open } = document.getState();
    const answer = found?.mends.answers[number];
    if (open === null || open.report === null || found === null || answer === undefined) return;
    if (open.history.present !== found.from) {
      jobs.tell('The project has changed since this was tried', ['Try again what would mend it.']);
      return;
    }
    const report = takenMend(open.report, answer);
    document.edit('mend', (project) => applyMend(project, answer.mend));
    store.setState({ found: null, shown: null });
    const now = filesNow();
    if (now === null) return;
    document.reported(report, now.project, [answer.mend.run]);
    const checked = await jobs.work('Checking the mended run', 'checkLays', { ...now.files, report });
    if (checked !== null) document.reported(checked, now.project, [answer.mend.run]);
  };

  return {
    ...store,
    look,
    make,
    show: (shown: number | null): void => store.setState({ shown }),
    clear: (): void => store.setState({ found: null, shown: null }),
  };
}

export type OnMends = ReturnType<typeof createOnMends>;
