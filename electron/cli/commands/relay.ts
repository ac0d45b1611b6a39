import { bad, good, type Problem } from '../../../shared/base/result.ts';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import type { HandChange, HandShape } from '../../../shared/document/hand/handChange.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { threadJobHost } from '../../node/threadJobHost.ts';
import { defineCommand, type LayingOptions, layingOptions, numbersOf, type Values } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { handTable } from '../handTable.ts';
import { isoDay } from '../isoDay.ts';
import { tellAnswer } from '../tellAnswer.ts';
import { tellReport } from '../tellReport.ts';
import { watchedJob } from '../watchedJob.ts';

const HAND_FILE = 'hand-shape.json';

/** One run laid again by hand. Without a pull and without moved ports: as the project is now. */
interface RelayOptions extends LayingOptions {
  readonly run: string;
  readonly report: string;
  readonly pull?: { readonly arcLengthMm: number; readonly to: Vec3 };
  readonly moved: readonly { readonly port: string; readonly seatPoint: Vec3 }[];
}

const OPTIONS = {
  run: { type: 'string', multiple: true },
  lay: { type: 'string' },
  pull: { type: 'string' },
  move: { type: 'string', multiple: true },
  out: { type: 'string' },
  json: { type: 'boolean' },
} as const;

/** `hosewright relay`: one run laid again near where it lies, or shown as a hand and moved ports have it. */
export const relayCommand = defineCommand({
  name: 'relay',
  usage: [
    [
      'relay  PROJECT --run NAME --lay REPORT.json [--pull MM,X,Y,Z] [--move PORT,X,Y,Z]... [--out DIR] [--json]',
      'lay one run again near where it lies, as the project is now;',
      'or show it with a place, so many mm from shoulder A, held at',
      "X,Y,Z (mm, bay frame), or with a port's seat at X,Y,Z",
    ],
  ],
  options: OPTIONS,
  words: [1, 1],
  read: (words, values) => {
    const problems = relayProblems(values);
    return problems.length > 0
      ? bad<RelayOptions>(problems)
      : good({ ...layingOptions(words, values), ...handOptions(values) });
  },
  run: runRelay,
});

function relayProblems({ run, lay, pull, move = [] }: Values<typeof OPTIONS>): Problem[] {
  const problems: Problem[] = [];
  if (run?.length !== 1)
    problems.push({ path: '--run', message: 'expected the one run to lay again, such as --run oil-suction' });
  if (lay === undefined)
    problems.push({ path: '--lay', message: 'expected the lay report it lies in, such as --lay lay-report.json' });
  if (pull !== undefined && numbersOf(pull)?.length !== 4)
    problems.push({
      path: '--pull',
      message: 'expected mm from shoulder A and the place it is pulled to, such as 310,640,220,515',
      got: JSON.stringify(pull),
    });
  for (const text of move)
    if (movedPort(text) === undefined)
      problems.push({
        path: '--move',
        message: 'expected a port and where its seat is now, mm, such as turbo-oil-inlet,815,322,565',
        got: JSON.stringify(text),
      });
  return problems;
}

/** What was checked by `relayProblems`. */
function handOptions({ run, lay, pull, move = [] }: Values<typeof OPTIONS>): Omit<RelayOptions, keyof LayingOptions> {
  const [arcLengthMm = 0, x = 0, y = 0, z = 0] = numbersOf(pull ?? '') ?? [];
  return {
    run: run?.[0] ?? '',
    report: lay ?? '',
    ...(pull === undefined ? {} : { pull: { arcLengthMm, to: [x, y, z] } }),
    moved: move.flatMap((text) => movedPort(text) ?? []),
  };
}

function movedPort(text: string): RelayOptions['moved'][number] | undefined {
  const [port, ...rest] = text.split(',');
  const [x, y, z, ...more] = numbersOf(rest.join(',')) ?? [];
  if (port === undefined || port === '' || x === undefined || y === undefined || z === undefined) return undefined;
  return more.length > 0 ? undefined : { port, seatPoint: [x, y, z] };
}

async function runRelay(options: RelayOptions, host: CommandHost): Promise<ExitCode> {
  const [read, report] = await Promise.all([readProjectFiles(options.project), readReport(options.report)]);
  if (!read.ok || !report.ok)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report.ok ? [] : report.problems)]);
  const { projectText, files } = read.value;
  if (options.pull !== undefined || options.moved.length > 0)
    return showInHand(options, { projectText, files }, report.value, host);
  const input = { projectText, files, today: isoDay(host.today()), run: options.run, earlier: report.value };
  const laid = await watchedJob(host, 'relayRun', input);
  return laid.ok ? tellReport(laid.output, options, host) : laid.exit;
}

type Files = Pick<
  Extract<Awaited<ReturnType<typeof readProjectFiles>>, { ok: true }>['value'],
  'projectText' | 'files'
>;

async function showInHand(
  options: RelayOptions,
  project: Files,
  report: LayReport,
  host: CommandHost,
): Promise<ExitCode> {
  const change = changeOf(options, project.projectText);
  if (!change.ok) return reportProblems(host, change.problems);
  const thread = threadJobHost(host.folders.jobWorkerFile);
  try {
    const taken = await watchedJob(host, 'takeRun', { ...project, run: options.run, report }, thread);
    if (!taken.ok) return taken.exit;
    const moved = await watchedJob(host, 'moveRun', { hand: taken.output.hand, change: change.value }, thread);
    return moved.ok ? await tellShape(moved.output, options, host) : moved.exit;
  } finally {
    thread.close();
  }
}

/** The change as the job wants it; ports are looked up in the project, which names them all. */
function changeOf(
  { pull, moved }: RelayOptions,
  projectText: string,
): { ok: true; value: HandChange } | { ok: false; problems: { path: string; message: string; got?: string }[] } {
  const parsed = parseProject(projectText);
  if (!parsed.ok) return { ok: false, problems: [...parsed.problems] };
  const known = parsed.value.ports;
  const unknown = moved.filter(({ port }) => known.every((p) => p.id !== port));
  if (unknown.length > 0)
    return {
      ok: false,
      problems: unknown.map(({ port }) => ({ path: '--move', message: 'no port is called this', got: port })),
    };
  const ports = known.flatMap((p) => {
    const seat = moved.find(({ port }) => port === p.id)?.seatPoint;
    return seat === undefined ? [] : [{ ...p, seatPoint: [...seat] as [number, number, number] }];
  });
  return { ok: true, value: { ...(pull === undefined ? {} : { pull }), ...(ports.length === 0 ? {} : { ports }) } };
}

async function tellShape(shape: HandShape, options: RelayOptions, host: CommandHost): Promise<ExitCode> {
  const exit = shape.outcome === 'laid' ? EXIT.clean : EXIT.doNotCut;
  return tellAnswer({ answer: shape, words: handTable(shape), file: HAND_FILE, exit }, options, host);
}
