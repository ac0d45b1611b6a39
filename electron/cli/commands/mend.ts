import { bad, good, type Problem } from '../../../shared/base/result.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import { applyMend } from '../../../shared/document/mends/applyMend.ts';
import type { MendAnswer, Mends } from '../../../shared/document/mends/schema.ts';
import { takenMend } from '../../../shared/document/mends/takenMend.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import type { ProjectFiles } from '../../../shared/document/project/projectFiles.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { CHECK_NAMES } from '../../../shared/document/wording/findingWords.ts';
import type { JobHost } from '../../../shared/jobs/hostJobs.ts';
import { type ProjectOnDisk, readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { saveProject } from '../../node/saveProject.ts';
import { threadJobHost } from '../../node/threadJobHost.ts';
import { defineCommand, type LayingOptions, layingOptions } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { isoDay } from '../isoDay.ts';
import { mendText } from '../mendText.ts';
import { tellAnswer } from '../tellAnswer.ts';
import { tellReport } from '../tellReport.ts';
import { type WatchedEnd, watchedJob } from '../watchedJob.ts';

const MENDS_FILE = 'mends.json';

interface MendOptions extends LayingOptions {
  /** absent = the project is laid first */
  readonly report?: string;
  readonly checks: readonly string[];
  /** number of the answer to make, from 1 */
  readonly apply?: number;
}

/** `hosewright mend`: what would mend the findings of a run, tried by laying it so; one of them is made in the project. */
export const mendCommand = defineCommand({
  name: 'mend',
  usage: [
    [
      'mend  PROJECT [RUN] [--check NAME]... [--lay REPORT.json] [--apply N --save] [--out DIR] [--json]',
      'try what would mend the findings of a run, or of every run;',
      '--apply N --save makes answer N in the project file',
    ],
  ],
  options: {
    check: { type: 'string', multiple: true },
    lay: { type: 'string' },
    apply: { type: 'string' },
    save: { type: 'boolean' },
    out: { type: 'string' },
    json: { type: 'boolean' },
  },
  words: [1, 2],
  wordsAre: 'a project, and the run to mend',
  read: (words, values) => {
    const { check: checks = [], apply, save } = values;
    const number = apply === undefined ? undefined : Number(apply);
    const problems = [
      ...checks.flatMap(unknownCheck),
      ...(number === undefined || (Number.isInteger(number) && number > 0)
        ? []
        : [{ path: '--apply', message: 'expected the number of an answer, from 1' }]),
      ...((apply === undefined) === (save !== true)
        ? []
        : [{ path: '--apply', message: '--apply N and --save go together: they write the project file' }]),
      ...(apply === undefined || words.length === 2
        ? []
        : [{ path: '--apply', message: 'expected the run as well, whose answer that is' }]),
    ];
    if (problems.length > 0) return bad<MendOptions>(problems);
    return good({
      ...layingOptions(words, { ...values, run: words.slice(1) }),
      checks,
      ...(values.lay === undefined ? {} : { report: values.lay }),
      ...(number === undefined ? {} : { apply: number }),
    });
  },
  run: runMend,
});

function unknownCheck(name: string): Problem[] {
  return CHECK_NAMES.some((known) => known === name)
    ? []
    : [{ path: '--check', message: `expected one of ${CHECK_NAMES.join(', ')}`, got: JSON.stringify(name) }];
}

async function runMend(options: MendOptions, host: CommandHost): Promise<ExitCode> {
  const read = await readProjectFiles(options.project);
  const given = options.report === undefined ? undefined : await readReport(options.report);
  if (!read.ok || given?.ok === false)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(given?.ok === false ? given.problems : [])]);
  const { projectText, files } = read.value;
  const project = { projectText, files, today: isoDay(host.today()) };
  const thread = threadJobHost(host.folders.jobWorkerFile);
  try {
    const report =
      given === undefined
        ? await watchedJob(host, 'layRuns', project, thread)
        : { ok: true as const, output: given.value };
    if (!report.ok) return report.exit;
    const tried = await tryEach(options, project, report.output, host, thread);
    if (!tried.ok) return tried.exit;
    if (options.apply !== undefined)
      return await apply(options, { onDisk: read.value, project, report: report.output }, tried.mends, host, thread);
    return await tell(options, tried.mends, host);
  } finally {
    thread.close();
  }
}

type Tried = { readonly ok: true; readonly mends: readonly Mends[] } | Extract<WatchedEnd<'tryMends'>, { ok: false }>;

/** The named run, or every run that has something to mend. */
async function tryEach(
  { runs, checks }: MendOptions,
  project: ProjectFiles,
  report: LayReport,
  host: CommandHost,
  thread: JobHost,
): Promise<Tried> {
  const grave = report.findings.filter(
    (f) => f.severity !== 'note' && (checks.length === 0 || checks.includes(f.check)),
  );
  const wanted = runs.length > 0 ? runs : [...new Set(grave.map(({ run }) => run))];
  const mends: Mends[] = [];
  for (const run of wanted) {
    const input = { ...project, run, report, ...(checks.length === 0 ? {} : { checks }) };
    const done = await watchedJob(host, 'tryMends', input, thread);
    if (!done.ok) return done;
    mends.push(done.output);
  }
  return { ok: true, mends };
}

async function tell(options: MendOptions, mends: readonly Mends[], host: CommandHost): Promise<ExitCode> {
  const words = mends.length === 0 ? 'nothing forbids cutting or is to be looked at\n' : mends.map(mendText).join('\n');
  const isStopped = mends.some(({ aimedAt }) => aimedAt.some((f) => f.severity === 'stop'));
  const exit = isStopped ? EXIT.doNotCut : EXIT.clean;
  return tellAnswer({ answer: mends, words, file: MENDS_FILE, exit }, options, host);
}

interface Applied {
  readonly onDisk: ProjectOnDisk;
  readonly project: ProjectFiles;
  readonly report: LayReport;
}

/** Makes one answer in the project file, and tells the report with the lay that it was tried with. */
async function apply(
  options: MendOptions,
  { onDisk, project, report }: Applied,
  mends: readonly Mends[],
  host: CommandHost,
  thread: JobHost,
): Promise<ExitCode> {
  const answers = mends[0]?.answers ?? [];
  const answer = answers[(options.apply ?? 0) - 1];
  if (answer === undefined)
    return reportProblems(host, [
      { path: '--apply', message: `there are ${answers.length} answers`, got: `${options.apply}` },
    ]);
  const mended = mendedText(onDisk.projectText, answer);
  if (!mended.ok) return reportProblems(host, mended.problems);
  const input = { ...project, projectText: mended.value, report: takenMend(report, answer) };
  const checked = await watchedJob(host, 'checkLays', input, thread);
  if (!checked.ok) return checked.exit;
  const saved = await saveProject(onDisk.file, mended.value, []);
  if (!saved.ok) return reportProblems(host, saved.problems);
  if (!options.json) host.out(`${answer.words}\nsaved: ${saved.value}\n\n`);
  return tellReport(checked.output, options, host);
}

function mendedText(projectText: string, answer: MendAnswer) {
  const parsed = parseProject(projectText);
  return parsed.ok ? good(serialiseProject(applyMend(parsed.value, answer.mend))) : parsed;
}
