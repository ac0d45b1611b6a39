import type { DesktopApi } from '../../shared/desktop/contract.ts';
import type { PaperFonts } from '../../shared/jobs/contract.ts';
import type { JobHost } from '../../shared/jobs/hostJobs.ts';

/** What the bench needs from outside the window's own state. */
export interface BenchPorts {
  readonly jobs: Pick<JobHost, 'start'>;
  readonly desktop: DesktopApi;
  paperFonts(): Promise<PaperFonts>;
  /** Date to print on papers, as year-month-day. */
  today(): string;
}
