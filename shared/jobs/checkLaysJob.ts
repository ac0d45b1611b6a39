import { good, type Result } from '../base/result.ts';
import type { LayReport } from '../document/lay/schema.ts';
import type { JobInput } from './contract.ts';
import { readProject } from './readProject.ts';
import { reportOf } from './reportOf.ts';

/** Checks lays against the project as it stands now. */
export async function checkLaysJob(input: JobInput<'checkLays'>): Promise<Result<LayReport>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const known = new Set(read.value.resolved.runs.map((r) => r.run.id));
  return good(
    reportOf(
      read.value,
      input.report.lays.filter((l) => known.has(l.run)),
      read.value.warnings,
    ),
  );
}
