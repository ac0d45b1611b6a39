import path from 'node:path';
import { bad, good } from '../../../shared/base/result.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { writeFilesInto } from '../../node/writeFilesInto.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { watchedJob } from '../watchedJob.ts';
import { waysTable } from '../waysTable.ts';

const WAYS_FILE = 'ways-round.json';

interface WaysOptions extends LayingOptions {
  readonly run: string;
  readonly report?: string;
}

/** `hosewright ways`: one run on different sides of things. Other runs stand in the way only where an earlier report has them. */
export const waysCommand = defineCommand({
  name: 'ways',
  usage: [
    [
      'ways  PROJECT --run NAME [--lay REPORT.json] [--out DIR] [--json]',
      'lay one run on different sides of things, best first',
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
      ? bad<WaysOptions>([
          { path: '--run', message: 'expected the one run to lead round other things, such as --run turbo-oil-feed' },
        ])
      : good({ ...layingOptions(words, values), run, ...(values.lay === undefined ? {} : { report: values.lay }) });
  },
  run: runWays,
});

async function runWays(options: WaysOptions, host: CommandHost): Promise<ExitCode> {
  const read = await readProjectFiles(options.project);
  const report = options.report === undefined ? undefined : await readReport(options.report);
  if (!read.ok || report?.ok === false)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report?.ok === false ? report.problems : [])]);
  const { projectText, files } = read.value;
  const earlier = report === undefined ? {} : { earlier: report.value };
  const found = await watchedJob(host, 'waysRound', { projectText, files, run: options.run, ...earlier });
  if (!found.ok) return found.exit;
  const json = `${JSON.stringify(found.output, null, 2)}\n`;
  host.out(options.json ? json : waysTable(found.output));
  if (options.out !== undefined) {
    const written = await writeFilesInto(options.out, [{ path: WAYS_FILE, bytes: new TextEncoder().encode(json) }]);
    if (!written.ok) return reportProblems(host, written.problems);
    if (!options.json) host.out(`\nwritten: ${path.join(options.out, WAYS_FILE)}\n`);
  }
  return found.output.ways.some(({ findings }) => findings.every((f) => f.severity !== 'stop'))
    ? EXIT.clean
    : EXIT.doNotCut;
}
