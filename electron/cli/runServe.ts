import { findProjectFile } from '../node/readProjectFiles.ts';
import { type GivenProject, serveWindow } from '../node/serveWindow.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';

/** `hosewright serve`: the window in a browser of this machine, until Ctrl-C. */
export async function runServe(
  options: { readonly project?: string; readonly example: boolean; readonly port: number },
  host: CommandHost,
): Promise<ExitCode> {
  const { rendererFolder, demoProject } = host.folders;
  const found = options.project === undefined ? undefined : await findProjectFile(options.project);
  if (found?.ok === false) return reportProblems(host, found.problems);
  const given = found ? { place: found.value, savesInPlace: true } : exampleOf(options.example, demoProject);
  const served = await serveWindow({ rendererFolder, demoProject, port: options.port, ...(given && { given }) });
  host.out(`the window is at ${served.address}\nthis machine only; Ctrl-C ends it\n`);
  await new Promise<void>((resolve) => host.onInterrupt(resolve));
  await served.close();
  return EXIT.clean;
}

function exampleOf(wanted: boolean, demoProject: string): GivenProject | undefined {
  return wanted ? { place: demoProject, savesInPlace: false } : undefined;
}
