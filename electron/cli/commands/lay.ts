import { good } from '../../../shared/base/result.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import type { ExitCode } from '../exitCodes.ts';
import { isoDay } from '../isoDay.ts';
import { tellReport } from '../tellReport.ts';
import { watchedJob } from '../watchedJob.ts';

/** `hosewright lay`: lays the runs, checks them, and says what came of it. */
export const layCommand = defineCommand({
  name: 'lay',
  usage: [['lay    PROJECT [--run NAME]... [--out DIR] [--json]', 'lay the runs and check them']],
  options: { run: { type: 'string', multiple: true }, out: { type: 'string' }, json: { type: 'boolean' } },
  words: [1, 1],
  read: (words, values) => good(layingOptions(words, values)),
  run: runLay,
});

async function runLay(options: LayingOptions, host: CommandHost): Promise<ExitCode> {
  const read = await readProjectFiles(options.project);
  if (!read.ok) return reportProblems(host, read.problems);
  const { projectText, files } = read.value;
  const runs = options.runs.length === 0 ? {} : { runs: options.runs };
  const laid = await watchedJob(host, 'layRuns', { projectText, files, today: isoDay(host.today()), ...runs });
  return laid.ok ? tellReport(laid.output, options, host) : laid.exit;
}
