import { readFile } from 'node:fs/promises';
import { bad, good, type Problem, type Result } from '../../../shared/base/result.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../../shared/base/units.ts';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import { CLOCK_TOLERANCES } from '../../../shared/document/project/schema.ts';
import { parsePathPoints } from '../../../shared/document/straightened/parsePathPoints.ts';
import type { BentRodInput } from '../../../shared/jobs/contract.ts';
import { defineCommand, numbersOf, type Values } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { straightenedText } from '../straightenedText.ts';
import { watchedJob } from '../watchedJob.ts';

interface StraightenOptions extends Omit<BentRodInput, 'points'> {
  readonly file: string;
  readonly unit: LengthUnit;
  readonly json: boolean;
}

const OPTIONS = {
  'outlet-a': { type: 'string' },
  'outlet-b': { type: 'string' },
  'cut-off-a': { type: 'string' },
  'cut-off-b': { type: 'string' },
  unit: { type: 'string' },
  'clock-tolerance': { type: 'string' },
  json: { type: 'boolean' },
} as const;

/** `hosewright straighten`: a bent rod digitised on the job becomes cut length and clock. */
export const straightenCommand = defineCommand({
  name: 'straighten',
  usage: [
    [
      'straighten PATH.csv [--outlet-a X,Y,Z] [--outlet-b X,Y,Z] [--cut-off-a MM --cut-off-b MM] [--unit mm|cm|m|in] [--clock-tolerance mil-dtl-83796|army-tm] [--json]',
      'cut length and clock from a bent rod: points x, y, z along its axis from END A',
      'to END B, shoulder to shoulder; with --cut-off (C of each end) from seat to seat.',
      'An outlet is the way an angled end points, from its bend to its seat; without',
      'one that end is straight and the clock is free',
    ],
  ],
  options: OPTIONS,
  words: [1, 1],
  wordsAre: 'a file with the points of the rod, such as rod.csv',
  read: ([file = ''], values) => readOptions(file, values),
  run: runStraighten,
});

function readOptions(file: string, values: Values<typeof OPTIONS>): Result<StraightenOptions> {
  const problems: Problem[] = [];
  const told = (option: keyof typeof OPTIONS, message: string): undefined => {
    problems.push({ path: `--${option}`, message, got: JSON.stringify(values[option]) });
    return undefined;
  };
  const direction = (option: 'outlet-a' | 'outlet-b'): Vec3 | undefined => {
    const text = values[option];
    if (text === undefined) return undefined;
    const [x, y, z, ...more] = numbersOf(text) ?? [];
    if (x === undefined || y === undefined || z === undefined || more.length > 0 || Math.hypot(x, y, z) === 0)
      return told(option, 'expected a direction, such as 0,0,1');
    return [x, y, z];
  };
  const cutOff = (option: 'cut-off-a' | 'cut-off-b'): number => {
    const mm = values[option] === undefined ? 0 : Number(values[option]);
    return Number.isFinite(mm) ? mm : (told(option, 'expected C of the end in mm, such as 47') ?? 0);
  };
  const unit = LENGTH_UNITS.find((known) => known === (values.unit ?? 'mm'));
  if (unit === undefined) told('unit', `expected one of ${LENGTH_UNITS.join(', ')}`);
  const clockTolerance = CLOCK_TOLERANCES.find((known) => known === values['clock-tolerance']);
  if (values['clock-tolerance'] !== undefined && clockTolerance === undefined)
    told('clock-tolerance', `expected one of ${CLOCK_TOLERANCES.join(', ')}`);
  const outletA = direction('outlet-a');
  const outletB = direction('outlet-b');
  const cutOffMm = { a: cutOff('cut-off-a'), b: cutOff('cut-off-b') };
  if (problems.length > 0 || unit === undefined) return bad(problems);
  return good({
    file,
    unit,
    json: values.json === true,
    cutOffMm,
    ...(clockTolerance === undefined ? {} : { clockTolerance }),
    ...(outletA === undefined ? {} : { outletA }),
    ...(outletB === undefined ? {} : { outletB }),
  });
}

async function runStraighten({ file, unit, json, ...rod }: StraightenOptions, host: CommandHost): Promise<ExitCode> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return reportProblems(host, [{ path: file, message: 'the file cannot be read' }]);
  }
  const points = parsePathPoints(text, unit);
  if (!points.ok)
    return reportProblems(
      host,
      points.problems.map((p) => ({ ...p, path: [file, p.path].filter((part) => part !== '').join(' ') })),
    );
  const done = await watchedJob(host, 'straightenRod', { ...rod, points: points.value });
  if (!done.ok) return done.exit;
  host.out(json ? `${JSON.stringify(done.output, null, 2)}\n` : straightenedText(done.output));
  return EXIT.clean;
}
