import { readVersion } from '../node/readVersion.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { parseCommand } from './parseCommand.ts';
import { usage } from './usage.ts';

/** Reads the command line, does what it asks, and answers the exit code. */
export async function runCommand(argv: readonly string[], host: CommandHost): Promise<ExitCode> {
  const parsed = parseCommand(argv);
  if (!parsed.ok) {
    reportProblems(host, parsed.problems);
    host.err(`\n${usage()}`);
    return EXIT.badInput;
  }
  const asked = parsed.value;
  if (asked.kind === 'command') return asked.command.run(asked.asked, host);
  host.out(asked.kind === 'help' ? usage() : `${await readVersion(host.folders.manifestFile)}\n`);
  return EXIT.clean;
}
