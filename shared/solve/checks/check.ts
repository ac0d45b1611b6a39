import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';

/** What a check is handed: one run, its lay, and the project for skins, overrides and other runs. */
export interface CheckContext {
  readonly project: Project;
  readonly run: ResolvedRun;
  readonly lay: Lay;
  /** the day, `YYYY-MM-DD`, as the host has it; absent = not said */
  readonly today?: string;
}

/** A check: pure, the same findings for the same context. */
export type Check = (context: CheckContext) => Finding[];
