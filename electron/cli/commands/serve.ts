import { bad, good, type Result } from '../../../shared/base/result.ts';
import { findProjectFile } from '../../node/readProjectFiles.ts';
import { type GivenProject, serveWindow } from '../../node/serveWindow.ts';
import { defineCommand } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';

interface ServeOptions {
  readonly project?: string;
  readonly example: boolean;
  readonly port: number;
}

/** `hosewright serve`: the window in a browser of this machine, until Ctrl-C. */
export const serveCommand = defineCommand({
  name: 'serve',
  usage: [['serve  [PROJECT | --example] [--port N]', 'the window in a browser, on this machine only']],
  options: { port: { type: 'string' }, example: { type: 'boolean' } },
  words: [0, 1],
  read: ([project], { port = '0', example = false }) => serveOptions(project, port, example),
  run: runServe,
});

function serveOptions(project: string | undefined, portText: string, example: boolean): Result<ServeOptions> {
  const port = Number(portText);
  if (!/^\d+$/.test(portText) || port > 65535)
    return bad([{ path: '--port', message: 'expected a port, 0 to 65535', got: JSON.stringify(portText) }]);
  if (example && project !== undefined)
    return bad([{ path: '--example', message: 'expected either a project or the example, not both' }]);
  return good({ port, example, ...(project === undefined ? {} : { project }) });
}

async function runServe(options: ServeOptions, host: CommandHost): Promise<ExitCode> {
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
