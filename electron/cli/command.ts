import type { Result } from '../../shared/base/result.ts';
import type { CommandHost } from './commandHost.ts';
import type { ExitCode } from './exitCodes.ts';

/** An option of a command: a flag, a value, or a value that may be given again. */
export interface Option {
  readonly type: 'string' | 'boolean';
  readonly multiple?: boolean;
}

/** What was given for each option of a command. */
export type Values<O extends Readonly<Record<string, Option>>> = {
  readonly [K in keyof O]?: O[K] extends { multiple: true }
    ? readonly string[]
    : O[K] extends { type: 'boolean' }
      ? boolean
      : string;
};

/** A command of the command line: how it is written, how its words and options read, what it does. */
export interface Command<O extends Readonly<Record<string, Option>> = Readonly<Record<string, Option>>, T = unknown> {
  readonly name: string;
  /** for the help: how it is called, and what it does; further lines stand under that */
  readonly usage: readonly (readonly [call: string, ...does: string[]])[];
  readonly options: O;
  /** how many words may follow its name */
  readonly words: readonly [least: number, most: number];
  /** what the words are, for who leaves them out */
  readonly wordsAre?: string;
  /** what is asked, or every mistake in it. Unknown options and the count of words are looked at before */
  read(words: readonly string[], values: Values<O>): Result<T>;
  run(asked: T, host: CommandHost): ExitCode | Promise<ExitCode>;
}

/** A command with the types of its own options, as one of many. */
export function defineCommand<const O extends Readonly<Record<string, Option>>, T>(command: Command<O, T>): Command {
  return command as unknown as Command;
}

/** Asked of every command that lays or reads lays. */
export interface LayingOptions {
  readonly project: string;
  /** empty = every run */
  readonly runs: readonly string[];
  readonly out?: string;
  readonly json: boolean;
}

/** What the commands that take a project have alike. */
export function layingOptions(
  words: readonly string[],
  values: { readonly run?: readonly string[]; readonly out?: string; readonly json?: boolean },
): LayingOptions {
  return {
    project: words[0] ?? '',
    runs: values.run ?? [],
    json: values.json === true,
    ...(values.out === undefined ? {} : { out: values.out }),
  };
}

/** Numbers with commas between, or undefined where one of them is none. */
export function numbersOf(text: string): number[] | undefined {
  const numbers = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return numbers.every(Number.isFinite) ? numbers : undefined;
}
