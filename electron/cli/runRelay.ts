import path from 'node:path';
import type { HandChange, HandShape } from '../../shared/document/hand/handChange.ts';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';
import { readProjectFiles } from '../node/readProjectFiles.ts';
import { readReport } from '../node/readReport.ts';
import { threadJobHost } from '../node/threadJobHost.ts';
import { writeFilesInto } from '../node/writeFilesInto.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { handTable } from './handTable.ts';
import type { RelayOptions } from './parseCommand.ts';
import { tellReport } from './tellReport.ts';
import { watchedJob } from './watchedJob.ts';

const HAND_FILE = 'hand-shape.json';

/** `hosewright relay`: one run laid again near where it lies, or shown as a hand and moved ports have it. */
export async function runRelay(options: RelayOptions, host: CommandHost): Promise<ExitCode> {
  const [read, report] = await Promise.all([readProjectFiles(options.project), readReport(options.report)]);
  if (!read.ok || !report.ok)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report.ok ? [] : report.problems)]);
  const { projectText, files } = read.value;
  if (options.pull !== undefined || options.moved.length > 0)
    return showInHand(options, { projectText, files }, report.value, host);
  const input = { projectText, files, run: options.run, earlier: report.value };
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
  const json = `${JSON.stringify(shape, null, 2)}\n`;
  host.out(options.json ? json : handTable(shape));
  if (options.out !== undefined) {
    const written = await writeFilesInto(options.out, [{ path: HAND_FILE, bytes: new TextEncoder().encode(json) }]);
    if (!written.ok) return reportProblems(host, written.problems);
    if (!options.json) host.out(`\nwritten: ${path.join(options.out, HAND_FILE)}\n`);
  }
  return shape.outcome === 'laid' ? EXIT.clean : EXIT.doNotCut;
}
