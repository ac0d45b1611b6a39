import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore } from './documentStore.ts';
import type { JobsStore } from './jobsStore.ts';

interface MeasureNeeds {
  readonly document: DocumentStore;
  readonly jobs: JobsStore;
  /** reports whose hoses were not all measured against each other */
  readonly joined: WeakSet<LayReport>;
  readonly filesNow: () => { readonly files: ProjectFiles; readonly project: Project } | null;
}

/** ms without another step before hoses are measured: steps are taken back several at a time. */
const REST_MS = 350;

const TITLE = 'Measuring the hoses against each other';

/** Measures hoses of different answers against each other when they stand in one report: none of them is laid for it. */
export function measureJoined({ document, jobs, joined, filesNow }: MeasureNeeds): void {
  let resting: ReturnType<typeof setTimeout> | undefined;

  const toMeasure = (): LayReport | undefined => {
    const report = document.getState().open?.report ?? undefined;
    return report !== undefined && joined.has(report) ? report : undefined;
  };

  const measure = async (): Promise<void> => {
    const [earlier, now] = [toMeasure(), filesNow()];
    if (earlier === undefined || now === null || jobs.getState().current !== null) return;
    const report = await jobs.work(TITLE, 'layRuns', { ...now.files, runs: [], earlier });
    joined.delete(earlier);
    if (report !== null && document.getState().open?.report === earlier) document.reported(report, now.project, []);
  };

  const soon = (): void => {
    clearTimeout(resting);
    if (toMeasure() !== undefined) resting = setTimeout(() => void measure(), REST_MS);
  };
  document.subscribe(({ open }, before) => {
    if (open?.report !== before.open?.report) soon();
  });
  jobs.subscribe(({ current }, before) => {
    if (current === null && before.current !== null) soon();
  });
}
