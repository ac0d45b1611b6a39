import { bad, good, type Result } from '../base/result.ts';
import type { Watch } from '../base/watch.ts';
import { makeSheets } from '../sheets/index.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { readProject, unknownRuns } from './readProject.ts';

/** Draws the papers of a report. */
export async function makeSheetsJob(
  input: JobInput<'makeSheets'>,
  watch: Watch,
): Promise<Result<JobOutput<'makeSheets'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const wanted = input.runs;
  const unknown = unknownRuns(wanted ?? [], read.value);
  if (unknown.length > 0) return bad(unknown);
  const { project, runs } = read.value.resolved;
  watch.report({ fraction: 0.2, doing: 'drawing the papers' });
  const { report, fonts, printedOn } = input;
  const files = await makeSheets(
    {
      project,
      report,
      runs,
      rolls: read.value.tables.rolls,
      fonts,
      printedOn,
      currentInputHash: read.value.inputHash,
      currentRunHashes: read.value.runHashes,
    },
    { runs: wanted, papers: input.papers },
  );
  return good({ files });
}
