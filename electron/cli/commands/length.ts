import { good } from '../../../shared/base/result.ts';
import { readCodedLength } from '../../../shared/document/length/codedLength.ts';
import { readLength } from '../../../shared/document/parts/readLength.ts';
import { formatLengthBoth } from '../../../shared/sheets/format/index.ts';
import { defineCommand } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';

interface LengthOptions {
  readonly text: string;
  readonly json: boolean;
}

interface Told {
  readonly mm: number;
  readonly readAs: string;
}

/** `hosewright length`: what a length as it was written means, every meaning it may have. */
export const lengthCommand = defineCommand({
  name: 'length',
  usage: [
    [
      'length TEXT [--json]',
      'what a length such as 24-3/8", 620mm or 0244 means, in mm and inches; every',
      'meaning where there are several',
    ],
  ],
  options: { json: { type: 'boolean' } },
  words: [1, 4],
  wordsAre: 'a length, such as 24-3/8 or 0244',
  read: (words, values) => good<LengthOptions>({ text: words.join(' '), json: values.json === true }),
  run: tellLength,
});

function tellLength({ text, json }: LengthOptions, host: CommandHost): ExitCode {
  const told = meanings(text);
  if (typeof told === 'string')
    return reportProblems(host, [{ path: 'TEXT', message: told, got: JSON.stringify(text) }]);
  const ambiguous = told.length > 1;
  if (json) host.out(`${JSON.stringify({ text, ambiguous, readings: told }, null, 2)}\n`);
  else
    host.out(
      [
        ...(ambiguous ? [`"${text}" may mean ${told.length} lengths; only its words can tell:`] : []),
        ...told.map(({ mm, readAs }) => `${formatLengthBoth(mm, 'nearest', 32)}  ${readAs}`),
        '',
      ].join('\n'),
    );
  return EXIT.clean;
}

/** Every length the text may stand for, or why it is none. A plain number has no unit here, so it may be mm or inches. */
function meanings(text: string): Told[] | string {
  const coded = readCodedLength(text).map(({ mm, words }) => ({ mm, readAs: words }));
  const [mm, inch] = [readLength(text, 'mm'), readLength(text, 'in')];
  if (!mm.ok || !inch.ok) return coded.length > 0 ? coded : mm.ok ? 'expected a length' : mm.message;
  if (mm.mm === inch.mm) return [{ mm: mm.mm, readAs: 'as written' }];
  return [{ mm: mm.mm, readAs: 'in mm' }, { mm: inch.mm, readAs: 'in inches' }, ...coded];
}
