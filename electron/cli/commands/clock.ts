import { good } from '../../../shared/base/result.ts';
import { clockCode } from '../../../shared/document/clock/partCode.ts';
import { readClock } from '../../../shared/document/clock/readClock.ts';
import { CLOCK_DIALECTS } from '../../../shared/document/project/schema.ts';
import { DIALECT_WORDS, dialectSentence, formatDegrees } from '../../../shared/sheets/format/index.ts';
import { defineCommand } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';

interface ClockOptions {
  readonly text: string;
  readonly json: boolean;
}

/** `hosewright clock`: what hose, or which two hoses, a note on the clock means. */
export const clockCommand = defineCommand({
  name: 'clock',
  usage: [
    [
      'clock TEXT [--json]',
      'which hose a note such as "225 far to near clockwise" means, in the words of every',
      'dialect; both hoses where it does not say, as with V225 or @60',
    ],
  ],
  options: { json: { type: 'boolean' } },
  words: [1, 40],
  wordsAre: 'a note on the clock between two angled ends, such as V225',
  read: (words, values) => good<ClockOptions>({ text: words.join(' '), json: values.json === true }),
  run: tellClock,
});

function tellClock({ text, json }: ClockOptions, host: CommandHost): ExitCode {
  const read = readClock(text);
  if (!read.ok) return reportProblems(host, [{ path: 'TEXT', message: read.message, got: JSON.stringify(text) }]);
  const shapes = read.shapes.map((shape) => ({
    ...shape,
    code: clockCode(shape.clockDeg).code,
    sentences: CLOCK_DIALECTS.map((dialect) => dialectSentence(shape.clockDeg, dialect)),
  }));
  if (json) host.out(`${JSON.stringify({ text, ambiguous: shapes.length > 1, shapes }, null, 2)}\n`);
  else host.out(`${[...heading(text, shapes.length), ...shapes.flatMap(shapeLines)].join('\n')}\n`);
  return EXIT.clean;
}

function heading(text: string, shapes: number): string[] {
  if (shapes === 1) return [];
  return [
    `"${text}" does not say which end it is read from, or which way. It means one of two hoses: ask, or look at`,
    'the hose.',
    '',
  ];
}

function shapeLines(shape: { clockDeg: number; readAs: string; code: string; sentences: readonly string[] }): string[] {
  return [
    `CLOCK ${formatDegrees(shape.clockDeg)}, if it is: ${shape.readAs}`,
    ...CLOCK_DIALECTS.map((dialect, i) => `  ${DIALECT_WORDS[dialect]}\n    ${shape.sentences[i]}`),
    `  part code, angle over 5: ${shape.code}${codeNote(shape.clockDeg)}`,
    '',
  ];
}

function codeNote(clockDeg: number): string {
  const { codedDeg, offDeg } = clockCode(clockDeg);
  return offDeg < 0.05 ? '' : ` (${formatDegrees(codedDeg)}: ${offDeg.toFixed(1)} degrees off)`;
}
