import type { Clearance, Lay, Severity } from '../../../../../shared/document/lay/schema.ts';
import type { PartTables } from '../../../../../shared/document/parts/schema.ts';
import type { ResolvedProject } from '../../../../../shared/document/project/resolve.ts';
import type { Project } from '../../../../../shared/document/project/schema.ts';
import type { CheckName } from '../../../../../shared/document/wording/findingWords.ts';
import { clearanceTo } from '../../../../arbitraries/lays.ts';
import { resolved } from '../context.ts';

/** A project with one lay of it. */
export interface Spoilt {
  readonly project: ResolvedProject;
  readonly lay: Lay;
  readonly today?: string;
}

/** One kind of finding, with a project in which one figure can be moved over its limit and back. */
export interface Mutation {
  readonly check: CheckName;
  readonly rule: string;
  readonly severity: Severity;
  /** Where it turns, worked by hand or as published. */
  readonly limit: number;
  /** The limit that the finding itself names, where its gravity turns elsewhere. */
  readonly told?: number;
  /** A figure a little within the limit, and one a little past it. */
  readonly kept: number;
  readonly past: number;
  /** The same project and lay with the figure at this value. */
  readonly at: (figure: number) => Spoilt;
  /** Why an override of the rule does not move this limit; absent = it does, and is tried. */
  readonly limitStands?: string;
  /** Why there are no figures nearer the limit; absent = a few hundredths of it. */
  readonly coarse?: string;
}

/** A lay of the sample project, changed, with the sample parts, changed. */
export function spoilt(lay: Lay, changes: Partial<Project> = {}, tables: Partial<PartTables> = {}): Spoilt {
  return { project: resolved(changes, tables), lay };
}

/** A clearance proven exactly, so that a limit can be met to the digit. */
export function exactly(to: Clearance['to'], mm: number, requiredMm = 0): Clearance {
  return clearanceTo(to, mm, requiredMm, { provenAtLeastMm: mm });
}
