import { bad, good } from '../../shared/base/result.ts';
import type { Finding } from '../../shared/document/lay/schema.ts';
import type { JobOutput } from '../../shared/jobs/contract.ts';
import { readProjectFiles } from '../node/readProjectFiles.ts';
import { readReport } from '../node/readReport.ts';
import { type Command, defineCommand, type LayingOptions, layingOptions } from './command.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { isoDay } from './isoDay.ts';
import { tellAnswer } from './tellAnswer.ts';
import { watchedJob } from './watchedJob.ts';

type OneRunJob = 'endTrial' | 'waysRound';

interface OneRun<J extends OneRunJob> {
  readonly name: string;
  readonly does: string;
  /** what the run is asked for, after "expected the one run to" */
  readonly askedTo: string;
  readonly job: J;
  readonly file: string;
  readonly table: (output: JobOutput<J>) => string;
  /** the lays to choose from */
  readonly choices: (output: JobOutput<J>) => readonly { readonly findings: readonly Finding[] }[];
}

interface OneRunOptions extends LayingOptions {
  readonly run: string;
  readonly report?: string;
}

/** A command that lays one run in several ways. Other runs stand in the way only where an earlier report has them. */
export function oneRunCommand<J extends OneRunJob>(one: OneRun<J>): Command {
  return defineCommand({
    name: one.name,
    usage: [[`${one.name}  PROJECT --run NAME [--lay REPORT.json] [--out DIR] [--json]`, one.does]],
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
        ? bad<OneRunOptions>([
            { path: '--run', message: `expected the one run to ${one.askedTo}, such as --run turbo-oil-feed` },
          ])
        : good({ ...layingOptions(words, values), run, ...(values.lay === undefined ? {} : { report: values.lay }) });
    },
    run: (options, host) => lay(one, options, host),
  });
}

async function lay<J extends OneRunJob>(
  { job, table, file, choices }: OneRun<J>,
  options: OneRunOptions,
  host: CommandHost,
): Promise<ExitCode> {
  const read = await readProjectFiles(options.project);
  const report = options.report === undefined ? undefined : await readReport(options.report);
  if (!read.ok || report?.ok === false)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report?.ok === false ? report.problems : [])]);
  const { projectText, files } = read.value;
  const earlier = report === undefined ? {} : { earlier: report.value };
  const today = isoDay(host.today());
  const laid = await watchedJob(host, job, { projectText, files, today, run: options.run, ...earlier });
  if (!laid.ok) return laid.exit;
  const isClean = choices(laid.output).some(({ findings }) => findings.every((f) => f.severity !== 'stop'));
  const told = { answer: laid.output, words: table(laid.output), file, exit: isClean ? EXIT.clean : EXIT.doNotCut };
  return tellAnswer(told, options, host);
}
