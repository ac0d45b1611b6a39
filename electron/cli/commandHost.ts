import { describeProblem, type Problem } from '../../shared/base/result.ts';
import type { ProgramFolders } from '../node/programFolders.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';

/** What a command is lent of the process it runs in. */
export interface CommandHost {
  readonly folders: ProgramFolders;
  out(text: string): void;
  err(text: string): void;
  /** Whether errors go to a person's terminal, where one line may be written over. */
  readonly progressLine: boolean;
  /** Calls `stop` at every Ctrl-C until the answer is called. */
  onInterrupt(stop: () => void): () => void;
  today(): Date;
}

/** Bad input: every problem on a line of its own. */
export function reportProblems(host: CommandHost, problems: readonly Problem[]): ExitCode {
  host.err(problems.map((problem) => `${describeProblem(problem)}\n`).join(''));
  return EXIT.badInput;
}
