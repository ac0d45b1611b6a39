import type { Project } from '../../document/project/schema.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import type { NearLine } from './nearLine.ts';

/** What every lay of a project is made in. */
export interface LayContext {
  readonly project: Project;
  readonly bay: BayIndex;
  /** where it is given, routes are only looked for near a line, and quickly */
  readonly near?: NearLine;
}
