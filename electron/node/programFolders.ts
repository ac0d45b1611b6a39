import path from 'node:path';

/** Where the parts of the built program lie, whichever of its bundles asks. */
export interface ProgramFolders {
  readonly jobWorkerFile: string;
  readonly fontsFolder: string;
  readonly rendererFolder: string;
  readonly preloadFile: string;
  readonly demoProject: string;
  /** package.json */
  readonly manifestFile: string;
}

/** `entryFolder` is the folder of a bundle's own file: `cli`, `main` and `node` stand side by side in `.build`. */
export function programFolders(entryFolder: string): ProgramFolders {
  const build = path.dirname(entryFolder);
  return {
    jobWorkerFile: path.join(build, 'node', 'jobWorker.js'),
    fontsFolder: path.join(build, 'node', 'fonts'),
    rendererFolder: path.join(build, 'renderer'),
    preloadFile: path.join(build, 'preload', 'index.cjs'),
    manifestFile: path.join(path.dirname(build), 'package.json'),
    demoProject: path.join(path.dirname(build), 'models', 'bays', 'hillclimb'),
  };
}
