import { bad, good, type Problem, type Result } from '../../../shared/base/result.ts';
import { readClock } from '../../../shared/document/clock/readClock.ts';
import { readLength } from '../../../shared/document/parts/readLength.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import type { AsBuilt, Project } from '../../../shared/document/project/schema.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { withMeasured } from '../../../shared/document/proof/reclocked.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { builtText } from '../builtText.ts';
import { defineCommand, type Values } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { isoDay } from '../isoDay.ts';
import { watchedJob } from '../watchedJob.ts';

interface BuiltOptions {
  readonly project: string;
  readonly run: string;
  readonly report: string;
  readonly asBuilt: AsBuilt;
  readonly json: boolean;
}

const OPTIONS = {
  run: { type: 'string', multiple: true },
  lay: { type: 'string' },
  cut: { type: 'string' },
  clock: { type: 'string' },
  json: { type: 'boolean' },
} as const;

/** `hosewright built`: whether a hose as the bench measured it still fits, and how it lies. */
export const builtCommand = defineCommand({
  name: 'built',
  usage: [
    [
      'built  PROJECT --run NAME --lay REPORT.json [--cut LENGTH] [--clock ANGLE] [--json]',
      'lay a hose as it was made: measured cut (652mm, 25 5/8 in) and clock (268, as the card has it)',
    ],
  ],
  options: OPTIONS,
  words: [1, 1],
  read: ([project = ''], values) => readOptions(project, values),
  run: runBuilt,
});

function readOptions(project: string, { run, lay, cut, clock, json }: Values<typeof OPTIONS>): Result<BuiltOptions> {
  const problems: Problem[] = [];
  if (run?.length !== 1) problems.push({ path: '--run', message: 'expected the one run that was made' });
  if (lay === undefined) problems.push({ path: '--lay', message: 'expected the lay report of the plan' });
  if (cut === undefined && clock === undefined)
    problems.push({ path: '--cut', message: 'expected the measured cut length, such as --cut 652mm, or --clock' });
  const length = cut === undefined ? undefined : readLength(cut, 'mm');
  if (length?.ok === false) problems.push({ path: '--cut', message: length.message, got: JSON.stringify(cut) });
  // A bare number is the clock as the card has it.
  const bare = clock !== undefined && /^\d+(\.\d+)?$/.test(clock.trim());
  const read =
    clock === undefined ? undefined : readClock(bare ? `${clock} counter-clockwise from near to far` : clock);
  if (read?.ok === false) problems.push({ path: '--clock', message: read.message, got: JSON.stringify(clock) });
  const shapes = read?.ok ? read.shapes : [];
  if (shapes.length > 1)
    problems.push({
      path: '--clock',
      message: `means ${shapes.map((shape) => shape.clockDeg).join(' or ')}: run hosewright clock with it, and give the number`,
      got: JSON.stringify(clock),
    });
  const [shape] = shapes;
  if (problems.length > 0 || run?.[0] === undefined || lay === undefined) return bad(problems);
  return good({
    project,
    run: run[0],
    report: lay,
    json: json === true,
    asBuilt: {
      ...(length?.ok ? { cutLengthMm: length.mm } : {}),
      ...(shape === undefined ? {} : { clockDeg: shape.clockDeg }),
    },
  });
}

async function runBuilt(options: BuiltOptions, host: CommandHost): Promise<ExitCode> {
  const [read, report] = await Promise.all([readProjectFiles(options.project), readReport(options.report)]);
  if (!read.ok || !report.ok)
    return reportProblems(host, [...(read.ok ? [] : read.problems), ...(report.ok ? [] : report.problems)]);
  const parsed = parseProject(read.value.projectText);
  if (!parsed.ok) return reportProblems(host, parsed.problems);
  const measured = measuredIn(parsed.value, options);
  if (!measured.ok) return reportProblems(host, measured.problems);
  const projectText = serialiseProject(measured.value);
  const { files } = read.value;
  const input = { projectText, files, today: isoDay(host.today()), run: options.run, report: report.value };
  const made = await watchedJob(host, 'builtHose', input);
  if (!made.ok) return made.exit;
  const lay = made.output.lays.find((l) => l.run === options.run);
  const findings = made.output.findings.filter((f) => f.run === options.run && f.check === 'asBuilt');
  const { built } = lay ?? {};
  if (lay === undefined || built === undefined)
    return reportProblems(host, [{ path: '--run', message: 'there is no hose to lay so', got: options.run }]);
  host.out(options.json ? `${JSON.stringify({ built, findings }, null, 2)}\n` : builtText(lay, built, findings));
  return findings.some((f) => f.severity === 'stop') ? EXIT.doNotCut : EXIT.clean;
}

/** The project with the run's hose as it was measured; a clock that its proof test forbids is refused. */
function measuredIn(project: Project, { run, asBuilt }: BuiltOptions): Result<Project> {
  const made = withMeasured(project.runs.find(({ id }) => id === run)?.asBuilt, asBuilt);
  if ('refused' in made) return bad([{ path: '--clock', message: made.refused, got: String(asBuilt.clockDeg) }]);
  return good({ ...project, runs: project.runs.map((r) => (r.id === run ? { ...r, asBuilt: made.built } : r)) });
}
