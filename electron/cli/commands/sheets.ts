import path from 'node:path';
import { good } from '../../../shared/base/result.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import type { ProjectFiles } from '../../../shared/document/project/projectFiles.ts';
import { readPaperFonts } from '../../node/readPaperFonts.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { writeFilesInto } from '../../node/writeFilesInto.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import type { ExitCode } from '../exitCodes.ts';
import { isoDay } from '../isoDay.ts';
import { exitForReport } from '../tellReport.ts';
import { type WatchedEnd, watchedJob } from '../watchedJob.ts';

const DEFAULT_FOLDER = 'papers';

interface SheetsOptions extends LayingOptions {
  readonly report?: string;
}

/** `hosewright sheets`: draws the papers of a report, or of runs laid for the purpose. */
export const sheetsCommand = defineCommand({
  name: 'sheets',
  usage: [
    [
      'sheets PROJECT [--run NAME]... [--lay REPORT.json] [--out DIR]',
      'draw the papers; lays the runs first without --lay',
    ],
  ],
  options: { run: { type: 'string', multiple: true }, lay: { type: 'string' }, out: { type: 'string' } },
  words: [1, 1],
  read: (words, values) =>
    good<SheetsOptions>({
      ...layingOptions(words, values),
      ...(values.lay === undefined ? {} : { report: values.lay }),
    }),
  run: runSheets,
});

async function runSheets(options: SheetsOptions, host: CommandHost): Promise<ExitCode> {
  const [read, given] = await Promise.all([
    readProjectFiles(options.project),
    options.report === undefined ? undefined : readReport(options.report),
  ]);
  if (!read.ok || given?.ok === false) {
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(given?.ok === false ? given.problems : [])]);
  }
  const { projectText, files } = read.value;
  const printedOn = isoDay(host.today());
  const project: ProjectFiles = { projectText, files, today: printedOn };
  const runs = options.runs.length === 0 ? {} : { runs: options.runs };
  const laid = await reportFor(project, runs, given?.value, host);
  if (!laid.ok) return laid.exit;
  const fonts = await readPaperFonts(host.folders.fontsFolder);
  const input = { ...project, ...runs, report: laid.output, fonts, printedOn };
  const drawn = await watchedJob(host, 'makeSheets', input);
  if (!drawn.ok) return drawn.exit;
  const folder = options.out ?? DEFAULT_FOLDER;
  const written = await writeFilesInto(folder, drawn.output.files);
  if (!written.ok) return reportProblems(host, written.problems);
  host.out(written.value.map((name) => `${path.join(folder, name)}\n`).join(''));
  return exitForReport(laid.output);
}

async function reportFor(
  project: ProjectFiles,
  runs: { readonly runs?: readonly string[] },
  given: LayReport | undefined,
  host: CommandHost,
): Promise<WatchedEnd<'layRuns'>> {
  if (given !== undefined) return { ok: true, output: given };
  return watchedJob(host, 'layRuns', { ...project, ...runs });
}
