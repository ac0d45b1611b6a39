import { findProjectFile } from '../node/readProjectFiles.ts';
import { serveWindow } from '../node/serveWindow.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';

/** `hosewright serve`: the window in a browser of this machine, until Ctrl-C. */
export async function runServe(
  options: { readonly project?: string; readonly port: number },
  host: CommandHost,
): Promise<ExitCode> {
  const { rendererFolder, demoProject } = host.folders;
  const found = options.project === undefined ? undefined : await findProjectFile(options.project);
  if (found?.ok === false) return reportProblems(host, found.problems);
  const given = found === undefined ? {} : { givenProject: found.value };
  const served = await serveWindow({ rendererFolder, demoProject, port: options.port, ...given });
  host.out(`the window is at ${served.address}\nthis machine only; Ctrl-C ends it\n`);
  await new Promise<void>((resolve) => host.onInterrupt(resolve));
  await served.close();
  return EXIT.clean;
}
