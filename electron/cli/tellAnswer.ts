import path from 'node:path';
import { writeFilesInto } from '../node/writeFilesInto.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import type { ExitCode } from './exitCodes.ts';

interface Told {
  /** what a machine reads */
  readonly answer: unknown;
  /** the same for a person */
  readonly words: string;
  /** name of the file that holds the answer, where it is written */
  readonly file: string;
  /** what it stands for */
  readonly exit: ExitCode;
}

/** Prints an answer as words or as JSON, writes it where asked, and answers the exit code. */
export async function tellAnswer(
  { answer, words, file, exit }: Told,
  options: { readonly json: boolean; readonly out?: string },
  host: CommandHost,
): Promise<ExitCode> {
  const json = `${JSON.stringify(answer, null, 2)}\n`;
  host.out(options.json ? json : words);
  if (options.out === undefined) return exit;
  const written = await writeFilesInto(options.out, [{ path: file, bytes: new TextEncoder().encode(json) }]);
  if (!written.ok) return reportProblems(host, written.problems);
  if (!options.json) host.out(`\nwritten: ${path.join(options.out, file)}\n`);
  return exit;
}
