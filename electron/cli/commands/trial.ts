import path from 'node:path';
import { bad, good } from '../../../shared/base/result.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { writeFilesInto } from '../../node/writeFilesInto.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { trialTable } from '../trialTable.ts';
import { watchedJob } from '../watchedJob.ts';

const TRIAL_FILE = 'end-trial.json';

interface TrialOptions extends LayingOptions {
  readonly run: string;
  readonly report?: string;
}

/** `hosewright trial`: one run with every pair of ends. Other runs stand in the way only where an earlier report has them. */
export const trialCommand = defineCommand({
  name: 'trial',
  usage: [
    [
      'trial  PROJECT --run NAME [--lay REPORT.json] [--out DIR] [--json]',
      'lay one run with every pair of ends that fits, best first',
    ],
  ],
  options: {
    run: { type: 'string', multiple: true },
    lay: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
  },
  words: [1, 1],
  read: (words, values) => {
    const [run, ...more] = values.run ?? [];
    return run === undefined || more.length > 0
      ? bad<TrialOptions>([
          { path: '--run', message: 'expected the one run to try ends on, such as --run turbo-oil-feed' },
        ])
      : good({ ...layingOptions(words, values), run, ...(values.lay === undefined ? {} : { report: values.lay }) });
  },
  run: runTrial,
});

async function runTrial(options: TrialOptions, host: CommandHost): Promise<ExitCode> {
  const read = await readProjectFiles(options.project);
  const report = options.report === undefined ? undefined : await readReport(options.report);
  if (!read.ok || report?.ok === false)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report?.ok === false ? report.problems : [])]);
  const { projectText, files } = read.value;
  const earlier = report === undefined ? {} : { earlier: report.value };
  const tried = await watchedJob(host, 'endTrial', { projectText, files, run: options.run, ...earlier });
  if (!tried.ok) return tried.exit;
  const json = `${JSON.stringify(tried.output, null, 2)}\n`;
  host.out(options.json ? json : trialTable(tried.output));
  if (options.out !== undefined) {
    const written = await writeFilesInto(options.out, [{ path: TRIAL_FILE, bytes: new TextEncoder().encode(json) }]);
    if (!written.ok) return reportProblems(host, written.problems);
    if (!options.json) host.out(`\nwritten: ${path.join(options.out, TRIAL_FILE)}\n`);
  }
  return tried.output.entries.some(({ findings }) => findings.every((f) => f.severity !== 'stop'))
    ? EXIT.clean
    : EXIT.doNotCut;
}
