import path from 'node:path';
import { bad, good, type Result } from '../../shared/base/result.ts';
import type { OpenedProject, Saved } from '../../shared/desktop/contract.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import { atomicWrite } from '../node/atomicWrite.ts';
import { type ProjectOnDisk, readProjectFiles, reasonOf } from '../node/readProjectFiles.ts';
import type { RecentProjects } from '../node/recentProjects.ts';
import { saveProject, saveProjectCopy } from '../node/saveProject.ts';
import type { GivenProject } from '../node/serveWindow.ts';
import { writeFilesInto } from '../node/writeFilesInto.ts';
import type { TaskHandlers } from './answerTasks.ts';
import type { AskPlace } from './askPlace.ts';
import { readPicked } from './readPicked.ts';
import { asBytes, asNamedFiles, asPlainName, asText } from './taskArguments.ts';

interface Opened {
  readonly project: ProjectOnDisk;
  readonly savesInPlace: boolean;
}

/**
 * Does the window's tasks. The window names no place on disk: a place comes from the command line or from a dialog, and
 * main alone remembers which project is open.
 */
export function taskHandlers(
  ask: AskPlace,
  demoProject: string,
  given: GivenProject | undefined,
  recent: RecentProjects,
): TaskHandlers {
  let open: Opened | undefined;
  /** what the window was given last; it may find that it cannot be read, and then the one before stays open */
  let offered: Opened | undefined;

  async function opened(place: string, savesInPlace: boolean): Promise<Result<OpenedProject>> {
    const read = await readProjectFiles(place);
    if (!read.ok) return read;
    offered = { project: read.value, savesInPlace };
    const { folder, projectText, files } = read.value;
    return good({ label: path.basename(folder), savesInPlace, projectText, files });
  }

  /** The example that comes with the program is opened by its own button. */
  async function remembered(): Promise<void> {
    if (open?.savesInPlace === true) await recent.remember(open.project.file);
  }

  /** A project that may not be overwritten is saved as a copy, which is then the open one. */
  async function savedCopy(projectText: string, written: readonly NamedFile[]): Promise<Result<Saved>> {
    const folder = await ask.folder('Save a copy of the project in');
    if (folder === undefined) return good({ kind: 'not-saved' });
    const anew = new Set(written.map((file) => file.path));
    const kept = (open?.project.files ?? []).filter((file) => !anew.has(file.path));
    const copied = await saveProjectCopy(folder, projectText, [...kept, ...written]);
    if (!copied.ok) return copied;
    const reread = await opened(copied.value, true);
    if (reread.ok) open = offered;
    offered = undefined;
    await remembered();
    return reread.ok ? good({ kind: 'saved', where: copied.value }) : reread;
  }

  return {
    openGiven: async () => (given === undefined ? null : opened(given.place, given.savesInPlace)),
    openDemo: () => opened(demoProject, false),
    exampleParts: async () => {
      const read = await readProjectFiles(demoProject);
      if (!read.ok) return read;
      const { folder, projectText, files } = read.value;
      return good({ label: path.basename(folder), savesInPlace: false, projectText, files });
    },
    taken: async () => {
      open = offered ?? open;
      offered = undefined;
      await remembered();
    },
    beginNew: async () => {
      open = undefined;
      offered = undefined;
    },
    chooseProject: async () => {
      const place = await ask.project();
      return place === undefined ? null : opened(place, true);
    },
    recentProjects: () => recent.list(),
    openRecent: async (id) => {
      const file = await recent.fileOf(asText(id));
      return file === undefined ? bad([{ path: '', message: 'no longer on the list' }]) : opened(file, true);
    },
    forgetRecent: async (id) => recent.forget(asText(id)),
    chooseFiles: async () => {
      const places = await ask.files();
      return places === undefined ? null : readPicked(places);
    },
    saveProject: async (projectText, added = [], changed = []) => {
      const text = asText(projectText);
      const files = asNamedFiles(added);
      const tables = asNamedFiles(changed);
      if (open === undefined || !open.savesInPlace) return savedCopy(text, [...files, ...tables]);
      const saved = await saveProject(open.project.file, text, files, tables);
      return saved.ok ? good({ kind: 'saved', where: saved.value }) : saved;
    },
    saveFile: async (name, bytes) => {
      const content = asBytes(bytes);
      const place = await ask.saveAs(asPlainName(name));
      if (place === undefined) return good({ kind: 'not-saved' });
      try {
        await atomicWrite(place, content);
        return good({ kind: 'saved', where: place });
      } catch (error) {
        return bad([{ path: place, message: `could not be written (${reasonOf(error)})` }]);
      }
    },
    saveFiles: async (files) => {
      const named = asNamedFiles(files);
      const folder = await ask.folder('Save the papers in');
      if (folder === undefined) return good({ kind: 'not-saved' });
      const written = await writeFilesInto(folder, named);
      return written.ok ? good({ kind: 'saved', where: folder }) : written;
    },
  };
}
