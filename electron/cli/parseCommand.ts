import { parseArgs } from 'node:util';
import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import type { Command, Option, Values } from './command.ts';
import { COMMANDS } from './commands/index.ts';

/** What the command line asks for, checked. */
export type Asked =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | { readonly kind: 'command'; readonly command: Command; readonly asked: unknown };

const ALWAYS = { help: { type: 'boolean', short: 'h' }, version: { type: 'boolean' } } as const;
const OPTIONS: Readonly<Record<string, Option>> = Object.assign({}, ...COMMANDS.map(({ options }) => options), ALWAYS);

/** Reads a command line; every mistake in it is reported. */
export function parseCommand(argv: readonly string[]): Result<Asked> {
  const { values, positionals } = parsed(argv, OPTIONS);
  if (values['help'] === true) return good({ kind: 'help' });
  if (values['version'] === true) return good({ kind: 'version' });
  const [name] = positionals;
  const names = COMMANDS.map((command) => command.name).join(', ');
  if (name === undefined) return bad([{ path: '', message: `expected a command: ${names}` }]);
  const command = COMMANDS.find((known) => known.name === name);
  if (command === undefined) return bad([{ path: '', message: `unknown command ${name}; known: ${names}` }]);
  // Two commands may have an option of one name that differs: its own holds.
  const own = parsed(argv, { ...OPTIONS, ...command.options });
  const given = own.tokens.filter((token) => token.kind === 'option');
  const misused = [
    ...given.flatMap((option) => optionProblems(command, option)),
    ...wordProblems(command, own.positionals.slice(1)),
  ];
  const faulty = new Set(misused.map(({ path }) => path));
  const read = command.read(own.positionals.slice(1), own.values as Values<typeof command.options>);
  if (read.ok) return misused.length > 0 ? bad(misused) : good({ kind: 'command', command, asked: read.value });
  return bad([...misused, ...read.problems.filter(({ path }) => !faulty.has(path))]);
}

function parsed(argv: readonly string[], options: Readonly<Record<string, Option>>) {
  return parseArgs({ args: [...argv], options, allowPositionals: true, strict: false, tokens: true });
}

function optionProblems(
  { name, options }: Command,
  { name: option, value }: { readonly name: string; readonly value?: string | undefined },
): Problem[] {
  const path = `--${option}`;
  const known = options[option];
  if (known === undefined) return [{ path, message: `${name} has no such option` }];
  if (known.type === 'boolean') return value === undefined ? [] : [{ path, message: 'takes no value', got: value }];
  // A value that looks like an option is one that was forgotten; a negative number is a value.
  return value === undefined || value.startsWith('--') ? [{ path, message: 'expected a value after it' }] : [];
}

function wordProblems({ name, words: [least, most], wordsAre }: Command, words: readonly string[]): Problem[] {
  if (words.length < least) return [{ path: name, message: `expected ${wordsAre ?? 'a project file or its folder'}` }];
  return words.slice(most).map((word) => ({ path: name, message: 'one word too many', got: JSON.stringify(word) }));
}
