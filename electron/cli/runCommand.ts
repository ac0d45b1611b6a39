import { readVersion } from '../node/readVersion.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { parseCommand } from './parseCommand.ts';
import { runCheck } from './runCheck.ts';
import { runLay } from './runLay.ts';
import { runRelay } from './runRelay.ts';
import { runServe } from './runServe.ts';
import { runSheets } from './runSheets.ts';
import { runTrial } from './runTrial.ts';
import { schemaText } from './schemaText.ts';
import { USAGE } from './usage.ts';

/** Reads the command line, does what it asks, and answers the exit code. */
export async function runCommand(argv: readonly string[], host: CommandHost): Promise<ExitCode> {
  const parsed = parseCommand(argv);
  if (!parsed.ok) {
    reportProblems(host, parsed.problems);
    host.err(`\n${USAGE}`);
    return EXIT.badInput;
  }
  const command = parsed.value;
  switch (command.kind) {
    case 'help':
      host.out(USAGE);
      return EXIT.clean;
    case 'version':
      host.out(`${await readVersion(host.folders.manifestFile)}\n`);
      return EXIT.clean;
    case 'schema':
      host.out(schemaText(command.schema));
      return EXIT.clean;
    case 'serve':
      return runServe(command, host);
    case 'lay':
      return runLay(command, host);
    case 'trial':
      return runTrial(command, host);
    case 'relay':
      return runRelay(command, host);
    case 'check':
      return runCheck(command, host);
    case 'sheets':
      return runSheets(command, host);
  }
}
