import { createHash } from 'node:crypto';
import { mkdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { RecentProject } from '../../shared/desktop/contract.ts';
import { atomicWrite } from './atomicWrite.ts';

/** Projects remembered; older ones fall off the list. */
const MOST_PROJECTS = 12;

interface Kept {
  readonly file: string;
  readonly openedOn: string;
}

/** The projects opened lately, remembered from one sitting to the next. */
export interface RecentProjects {
  list(): Promise<readonly RecentProject[]>;
  /** the project file; undefined = no such one on the list */
  fileOf(id: string): Promise<string | undefined>;
  remember(file: string): Promise<void>;
  forget(id: string): Promise<readonly RecentProject[]>;
}

/**
 * Keeps the list in one file. One that cannot be read counts as empty, one that cannot be written is let be: no project is
 * refused because of a list. `today` is the ISO day.
 */
export function recentProjects(keptIn: string, today: () => string): RecentProjects {
  const read = async (): Promise<readonly Kept[]> => {
    try {
      return keptProjects(JSON.parse(await readFile(keptIn, 'utf8')));
    } catch {
      return [];
    }
  };
  let last: Promise<void> = Promise.resolve();
  /** One change after the other: two at once would lose one of them. */
  const change = (edit: (kept: readonly Kept[]) => readonly Kept[]): Promise<void> => {
    last = last.then(async () => {
      try {
        await mkdir(path.dirname(keptIn), { recursive: true });
        await atomicWrite(keptIn, JSON.stringify({ version: 1, projects: edit(await read()) }, null, 2));
      } catch {
        // Said above: the list is a convenience.
      }
    });
    return last;
  };
  const list = async (): Promise<readonly RecentProject[]> => Promise.all((await read()).map(recentOf));
  return {
    list,
    fileOf: async (id) => (await read()).find(({ file }) => idOf(file) === id)?.file,
    remember: (file) =>
      change((kept) => [{ file, openedOn: today() }, ...kept.filter((k) => k.file !== file)].slice(0, MOST_PROJECTS)),
    forget: async (id) => {
      await change((kept) => kept.filter(({ file }) => idOf(file) !== id));
      return list();
    },
  };
}

function idOf(file: string): string {
  return createHash('sha256').update(file).digest('hex').slice(0, 16);
}

async function recentOf({ file, openedOn }: Kept): Promise<RecentProject> {
  const folder = path.dirname(file);
  const missing = await stat(file).then(
    (found) => !found.isFile(),
    () => true,
  );
  return { id: idOf(file), label: path.basename(folder), where: folder, openedOn, missing };
}

/** What can be made of a list that another version or a hand may have written. */
function keptProjects(parsed: unknown): readonly Kept[] {
  const { projects } = (parsed ?? {}) as { projects?: unknown };
  if (!Array.isArray(projects)) return [];
  return projects.flatMap((entry: unknown): Kept[] => {
    const { file, openedOn } = (entry ?? {}) as Record<string, unknown>;
    const readable = typeof file === 'string' && path.isAbsolute(file) && typeof openedOn === 'string';
    return readable ? [{ file, openedOn }] : [];
  });
}
