import { readProjectFiles } from '../node/readProjectFiles.ts';
import { readReport } from '../node/readReport.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import type { ExitCode } from './exitCodes.ts';
import type { LayingOptions } from './parseCommand.ts';
import { tellReport } from './tellReport.ts';
import { watchedJob } from './watchedJob.ts';

/** `hosewright check`: checks the lays of a report against the project as it stands now. */
export async function runCheck(
  options: LayingOptions & { readonly report: string },
  host: CommandHost,
): Promise<ExitCode> {
  const [read, report] = await Promise.all([readProjectFiles(options.project), readReport(options.report)]);
  if (!read.ok || !report.ok) {
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report.ok ? [] : report.problems)]);
  }
  const { projectText, files } = read.value;
  const checked = await watchedJob(host, 'checkLays', { projectText, files, report: report.value });
  return checked.ok ? tellReport(checked.output, options, host) : checked.exit;
}
