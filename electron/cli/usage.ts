import { COMMANDS } from './commands/index.ts';

/** The help: every command, what the words mean, what the exit code says. */
export function usage(): string {
  const lines = COMMANDS.flatMap((command) => command.usage.flatMap(([call, ...does]) => entry(call, does)));
  return `hosewright: lays hose in a scanned bay and says how long to cut it and how to clock it

${lines.join('\n')}

  PROJECT      a project file or the folder of its project.json
  --run NAME   only this run (its id); may be given again
  --out DIR    where to write: lay-report.json, or the papers (default for sheets: papers)
  --json       print the answer as JSON and nothing else
  --help, --version

  Exit code    0 clean; 1 a finding forbids cutting, a run has no lay, or no ends fit; 2 the input is wrong

The program advises; it never certifies a hose.
`;
}

function entry(call: string, does: readonly string[]): string[] {
  return [`  hosewright ${call}`, ...does.map((line) => `      ${line}`)];
}
