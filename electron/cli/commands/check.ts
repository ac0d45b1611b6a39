import { bad, good } from '../../../shared/base/result.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import type { ExitCode } from '../exitCodes.ts';
import { isoDay } from '../isoDay.ts';
import { tellReport } from '../tellReport.ts';
import { watchedJob } from '../watchedJob.ts';

interface CheckOptions extends LayingOptions {
  readonly report: string;
}

/** `hosewright check`: checks the lays of a report against the project as it stands now. */
export const checkCommand = defineCommand({
  name: 'check',
  usage: [['check  PROJECT --lay REPORT.json [--json]', 'check earlier lays against the project as it is now']],
  options: { lay: { type: 'string' }, out: { type: 'string' }, json: { type: 'boolean' } },
  words: [1, 1],
  read: (words, values) =>
    values.lay === undefined
      ? bad<CheckOptions>([
          { path: '--lay', message: 'expected the lay report to check, such as --lay lay-report.json' },
        ])
      : good({ ...layingOptions(words, values), report: values.lay }),
  run: runCheck,
});

async function runCheck(options: CheckOptions, host: CommandHost): Promise<ExitCode> {
  const [read, report] = await Promise.all([readProjectFiles(options.project), readReport(options.report)]);
  if (!read.ok || !report.ok) {
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report.ok ? [] : report.problems)]);
  }
  const { projectText, files } = read.value;
  const checked = await watchedJob(host, 'checkLays', {
    projectText,
    files,
    today: isoDay(host.today()),
    report: report.value,
  });
  return checked.ok ? tellReport(checked.output, options, host) : checked.exit;
}
