import { bad, good, type Result } from '../../shared/base/result.ts';
import type { DesktopApi, OpenedProject, Saved } from '../../shared/desktop/contract.ts';
import { namedPaths } from '../../shared/document/project/namedPaths.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import { serverDesktop } from './serverDesktop.ts';
import { sittingProjects } from './sittingProjects.ts';

/**
 * The shell's tasks in a browser. Projects on the disk come from the local server that served the window; others from a
 * folder the user picks, which a page may read but not write, so saving them hands the browser a download.
 */
export function browserDesktop(page: Window): DesktopApi {
  const server = serverDesktop(page);
  const sitting = sittingProjects(() => server.open('given'));
  let savesInPlace = false;
  /** whether what was opened last does; it may turn out not to be readable, and then the one before stays open */
  let offered: boolean | null = null;
  /** tables that differ from the project as opened: each download is whole, so all of them go along every time */
  const newTables = new Map<string, NamedFile>();

  async function opened(asked: Promise<Result<OpenedProject> | null>): Promise<Result<OpenedProject> | null> {
    const project = await asked;
    if (project?.ok) offered = project.value.savesInPlace;
    return project;
  }

  function downloadProject(projectText: string, written: readonly NamedFile[]): Promise<Result<Saved>> {
    for (const file of written) if (file.path.endsWith('.csv')) newTables.set(file.path, file);
    // A scan is handed over once; the tables go along every time.
    const now = new Map([...newTables, ...written.map((file) => [file.path, file] as const)]);
    const named = namedPaths(projectText).flatMap(({ path }) => now.get(path) ?? []);
    return downloadAll(page, [{ path: 'project.json', bytes: new TextEncoder().encode(projectText) }, ...named]);
  }

  return {
    openGiven: () => opened(server.open('given').then(sitting.given)),
    openDemo: async () => {
      const demo = await opened(server.open('demo'));
      return demo ?? bad([{ path: '', message: 'the example bay is not beside the program' }]);
    },
    exampleParts: async () =>
      (await server.open('demo')) ?? bad([{ path: '', message: 'the example bay is not beside the program' }]),
    taken: async () => {
      if (offered === null) return;
      savesInPlace = offered;
      offered = null;
      newTables.clear();
    },
    beginNew: async () => {
      savesInPlace = false;
      offered = null;
      newTables.clear();
    },
    chooseProject: () => opened(pickFiles(page, { folder: true }).then((files) => files && sitting.picked(files))),
    recentProjects: async () => sitting.list(),
    openRecent: async (id) => {
      const again = await opened(sitting.open(id));
      return again ?? bad([{ path: '', message: 'no longer on the list' }]);
    },
    forgetRecent: async (id) => sitting.forget(id),
    chooseFiles: async () => {
      const files = await pickFiles(page, { folder: false });
      return files && good(await Promise.all(files.map(readPicked)));
    },
    saveProject: (projectText, added = [], changed = []) =>
      savesInPlace ? server.save(projectText, added, changed) : downloadProject(projectText, [...added, ...changed]),
    saveFile: (name, bytes) => download(page, name, bytes),
    saveFiles: (files) => downloadAll(page, files),
    // A browser has no menu of ours; the window's own buttons and keys do the same.
    onMenu: () => () => undefined,
  };
}

/** Shows the browser's own file dialog; null when the user closes it. */
function pickFiles(page: Window, { folder }: { readonly folder: boolean }): Promise<readonly File[] | null> {
  const input = page.document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.webkitdirectory = folder;
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files && input.files.length > 0 ? [...input.files] : null));
    input.addEventListener('cancel', () => resolve(null));
    input.click();
  });
}

async function readPicked(file: File): Promise<NamedFile> {
  return { path: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}

/** ms. Downloads begun at once are dropped by some browsers; the URL must outlive the start of its download. */
const BETWEEN_DOWNLOADS_MS = 150;
const KEEP_URL_MS = 60_000;

async function download(page: Window, name: string, bytes: Uint8Array): Promise<Result<Saved>> {
  const url = URL.createObjectURL(new Blob([bytes.slice()]));
  const link = page.document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  page.setTimeout(() => URL.revokeObjectURL(url), KEEP_URL_MS);
  await new Promise((resolve) => page.setTimeout(resolve, BETWEEN_DOWNLOADS_MS));
  return good(downloaded(`downloads, as ${name}`));
}

/** Files one by one; a download has no folders, so theirs stand in the names. */
async function downloadAll(page: Window, files: readonly NamedFile[]): Promise<Result<Saved>> {
  const [only] = files;
  if (files.length === 1 && only !== undefined) return download(page, only.path.replaceAll('/', '-'), only.bytes);
  for (const file of files) await download(page, file.path.replaceAll('/', '-'), file.bytes);
  return good(downloaded(`downloads (${files.length} files)`));
}

function downloaded(where: string): Saved {
  return { kind: 'saved', where };
}
