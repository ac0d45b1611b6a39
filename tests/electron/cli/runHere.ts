import path from 'node:path';
import type { CommandHost } from '../../../electron/cli/commandHost.ts';
import { runCommand } from '../../../electron/cli/runCommand.ts';
import { programFolders } from '../../../electron/node/programFolders.ts';

/** The folders of a program whose jobs are done by the built worker in this folder. */
export function foldersWithWorker(worker: string): CommandHost['folders'] {
  return { ...programFolders(worker), jobWorkerFile: path.join(worker, 'jobWorker.js') };
}

/** Runs a command in this process, and keeps what it says. */
export async function runHere(
  folders: CommandHost['folders'],
  args: readonly string[],
): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await runCommand(args, {
    folders,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    progressLine: false,
    onInterrupt: () => () => undefined,
    today: () => new Date('2026-06-01'),
  });
  return { code, out, err };
}
