import { parseArgs } from 'node:util';
import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';

export const SCHEMA_NAMES = ['project', 'lay-report', 'end-trial', 'part-tables'] as const;
export type SchemaName = (typeof SCHEMA_NAMES)[number];

/** What the command line asks for, checked. */
export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | { readonly kind: 'schema'; readonly schema: SchemaName }
  | { readonly kind: 'serve'; readonly project?: string; readonly example: boolean; readonly port: number }
  | ({ readonly kind: 'lay' } & LayingOptions)
  | ({ readonly kind: 'trial'; readonly run: string; readonly report?: string } & LayingOptions)
  | ({ readonly kind: 'relay' } & RelayOptions)
  | ({ readonly kind: 'check'; readonly report: string } & LayingOptions)
  | ({ readonly kind: 'sheets'; readonly report?: string } & LayingOptions);

export interface LayingOptions {
  readonly project: string;
  /** empty = every run */
  readonly runs: readonly string[];
  readonly out?: string;
  readonly json: boolean;
}

/** One run laid again by hand. Without a pull and without moved ports: as the project is now. */
export interface RelayOptions extends LayingOptions {
  readonly run: string;
  readonly report: string;
  readonly pull?: { readonly arcLengthMm: number; readonly to: Point };
  readonly moved: readonly { readonly port: string; readonly seatPoint: Point }[];
}

type Point = readonly [number, number, number];

const OPTIONS = {
  run: { type: 'string', multiple: true },
  out: { type: 'string' },
  json: { type: 'boolean' },
  lay: { type: 'string' },
  pull: { type: 'string' },
  move: { type: 'string', multiple: true },
  port: { type: 'string' },
  example: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
} as const;

type OptionName = keyof typeof OPTIONS;

/** Which options a command knows, and how many words may follow it. */
const COMMANDS: Readonly<Record<string, { options: readonly OptionName[]; words: readonly [number, number] }>> = {
  lay: { options: ['run', 'out', 'json'], words: [1, 1] },
  trial: { options: ['run', 'lay', 'out', 'json'], words: [1, 1] },
  relay: { options: ['run', 'lay', 'pull', 'move', 'out', 'json'], words: [1, 1] },
  check: { options: ['lay', 'out', 'json'], words: [1, 1] },
  sheets: { options: ['run', 'lay', 'out'], words: [1, 1] },
  schema: { options: [], words: [0, 1] },
  serve: { options: ['port', 'example'], words: [0, 1] },
};

/** Reads a command line; every mistake in it is reported. */
export function parseCommand(argv: readonly string[]): Result<Command> {
  let parsed: ReturnType<typeof parseWords>;
  try {
    parsed = parseWords(argv);
  } catch (error) {
    return bad([{ path: '', message: (error as Error).message }]);
  }
  const { values, positionals } = parsed;
  if (values.help === true) return good({ kind: 'help' });
  if (values.version === true) return good({ kind: 'version' });
  const [name, ...words] = positionals;
  if (name === undefined)
    return bad([{ path: '', message: `expected a command: ${Object.keys(COMMANDS).join(', ')}` }]);
  const known = COMMANDS[name];
  if (known === undefined) {
    return bad([{ path: '', message: `unknown command ${name}; known: ${Object.keys(COMMANDS).join(', ')}` }]);
  }
  const problems = [...optionProblems(name, values, known.options), ...wordProblems(name, words, known.words)];
  if (name === 'check' && values.lay === undefined) {
    problems.push({ path: '--lay', message: 'expected the lay report to check, such as --lay lay-report.json' });
  }
  if (name === 'relay') problems.push(...relayProblems(values));
  if (name === 'trial' && values.run?.length !== 1) {
    problems.push({ path: '--run', message: 'expected the one run to try ends on, such as --run turbo-oil-feed' });
  }
  return problems.length > 0 ? bad(problems) : commandOf(name, words, values);
}

function parseWords(argv: readonly string[]) {
  return parseArgs({ args: [...argv], options: OPTIONS, allowPositionals: true, strict: true });
}

type Values = ReturnType<typeof parseWords>['values'];

function optionProblems(name: string, values: Values, allowed: readonly OptionName[]): Problem[] {
  return (Object.keys(values) as OptionName[])
    .filter((option) => !allowed.includes(option))
    .map((option) => ({ path: `--${option}`, message: `${name} has no such option` }));
}

function wordProblems(name: string, words: readonly string[], [least, most]: readonly [number, number]): Problem[] {
  if (words.length < least) return [{ path: name, message: 'expected a project file or its folder' }];
  return words.slice(most).map((word) => ({ path: name, message: 'one word too many', got: JSON.stringify(word) }));
}

function commandOf(name: string, words: readonly string[], values: Values): Result<Command> {
  const [word] = words;
  if (name === 'schema') return schemaCommand(word ?? 'project');
  if (name === 'serve') return serveCommand(word, values.port ?? '0', values.example === true);
  const laying: LayingOptions = {
    project: word ?? '',
    runs: values.run ?? [],
    json: values.json === true,
    ...(values.out === undefined ? {} : { out: values.out }),
  };
  if (name === 'lay') return good({ kind: 'lay', ...laying });
  const report = values.lay === undefined ? {} : { report: values.lay };
  if (name === 'trial') return good({ kind: 'trial', run: values.run?.[0] ?? '', ...report, ...laying });
  if (name === 'relay') return good({ kind: 'relay', ...relayOptions(values), ...laying });
  if (name === 'check') return good({ kind: 'check', report: values.lay ?? '', ...laying });
  return good({ kind: 'sheets', ...report, ...laying });
}

function relayProblems({ run, lay, pull, move = [] }: Values): Problem[] {
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
function relayOptions({ run, lay, pull, move = [] }: Values): Omit<RelayOptions, keyof LayingOptions> {
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

function numbersOf(text: string): number[] | undefined {
  const numbers = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return numbers.every(Number.isFinite) ? numbers : undefined;
}

function schemaCommand(word: string): Result<Command> {
  const schema = SCHEMA_NAMES.find((known) => known === word);
  if (schema !== undefined) return good({ kind: 'schema', schema });
  return bad([{ path: 'schema', message: `expected one of ${SCHEMA_NAMES.join(', ')}`, got: JSON.stringify(word) }]);
}

function serveCommand(project: string | undefined, portText: string, example: boolean): Result<Command> {
  const port = Number(portText);
  if (!/^\d+$/.test(portText) || port > 65535) {
    return bad([{ path: '--port', message: 'expected a port, 0 to 65535', got: JSON.stringify(portText) }]);
  }
  if (example && project !== undefined) {
    return bad([{ path: '--example', message: 'expected either a project or the example, not both' }]);
  }
  return good({ kind: 'serve', port, example, ...(project === undefined ? {} : { project }) });
}
