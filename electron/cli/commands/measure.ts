import { bad, good, type Problem, type Result } from '../../../shared/base/result.ts';
import { type MeasuredEnd, measureEnd, type Readings } from '../../../shared/document/parts/measure/measureEnd.ts';
import { MEASURE_KINDS, type MeasureKind, READINGS } from '../../../shared/document/parts/measure/readings.ts';
import { readReading } from '../../../shared/document/parts/measure/readReading.ts';
import { defineCommand } from '../command.ts';
import type { CommandHost } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { measuredText, readingsText } from '../measuredText.ts';

interface MeasureOptions {
  readonly kind: MeasureKind;
  readonly readings: Readings;
  readonly json: boolean;
}

/** Far more readings than any end has. */
const MOST_WORDS = 30;

/** `hosewright measure`: what a caliper and a square read off an end, as its C, drop and lengths. */
export const measureCommand = defineCommand({
  name: 'measure',
  usage: [
    [
      'measure KIND [LETTER=LENGTH]... [--json]',
      'C, drop and lengths of an end from what a caliper and a square read off it, and',
      'whether the readings hold together. KIND is straight, elbow, half-turn, banjo or',
      'flange; alone it lists what to read. Lengths as read: 30.2, 1 3/16in, 1-3/16in',
    ],
  ],
  options: { json: { type: 'boolean' } },
  words: [1, MOST_WORDS],
  wordsAre: `a kind of end: ${MEASURE_KINDS.join(', ')}`,
  read: ([kindWord = '', ...words], values): Result<MeasureOptions> => {
    const kind = MEASURE_KINDS.find((known) => known === kindWord);
    if (kind === undefined)
      return bad([
        { path: 'measure', message: `expected one of ${MEASURE_KINDS.join(', ')}`, got: JSON.stringify(kindWord) },
      ]);
    const problems: Problem[] = [];
    const readings = Object.fromEntries(words.flatMap((word) => readingOf(kind, word, problems)));
    return problems.length > 0 ? bad(problems) : good({ kind, readings, json: values.json === true });
  },
  run: runMeasure,
});

function readingOf(kind: MeasureKind, word: string, problems: Problem[]): (readonly [key: string, value: number])[] {
  const [letter = '', ...rest] = word.split('=');
  const reading = READINGS[kind].find((known) => known.letter === letter);
  const letters = READINGS[kind].map((known) => known.letter).join(', ');
  const read = reading === undefined ? undefined : readReading(reading, rest.join('='), 'mm');
  if (reading !== undefined && read?.ok) return [[reading.key, read.value]];
  const message =
    read === undefined || read.ok ? `expected a letter and a length, such as A=46; letters: ${letters}` : read.message;
  problems.push({ path: `measure ${kind}`, message, got: JSON.stringify(word) });
  return [];
}

/** Readings that do not hold together end as a finding does: the end is not to be used as measured. */
function runMeasure({ kind, readings, json }: MeasureOptions, host: CommandHost): ExitCode {
  if (Object.keys(readings).length === 0) {
    host.out(json ? `${JSON.stringify(READINGS[kind], null, 2)}\n` : readingsText(kind));
    return EXIT.clean;
  }
  const measured: MeasuredEnd = measureEnd(kind, readings);
  host.out(json ? `${JSON.stringify(measured, null, 2)}\n` : measuredText(kind, measured));
  if (measured.missing.length > 0) return EXIT.badInput;
  return measured.again.length > 0 ? EXIT.doNotCut : EXIT.clean;
}
