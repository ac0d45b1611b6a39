import type { Result } from '../base/result.ts';
import type { NamedFile, ProjectFiles } from '../document/project/projectFiles.ts';

/** A project that a shell has read from disk for the window. */
export interface OpenedProject extends ProjectFiles {
  /** What to call it in the title: its folder's name. */
  readonly label: string;
  /** Whether `saveProject` writes it back where it came from; otherwise saving makes a copy. */
  readonly savesInPlace: boolean;
}

/** A project opened lately, as the shell remembers it. */
export interface RecentProject {
  /** the shell's own name for it; says nothing of where it lies */
  readonly id: string;
  /** its folder's name */
  readonly label: string;
  /** where it is, in words for the user */
  readonly where: string;
  /** ISO day; absent = in this sitting */
  readonly openedOn?: string;
  /** nothing is there any more */
  readonly missing: boolean;
}

/** What became of a save: where it went, in words for the user, or that the user thought better of it. */
export type Saved = { readonly kind: 'saved'; readonly where: string } | { readonly kind: 'not-saved' };

/** What the shell's menu asks of the window. */
export const MENU_COMMANDS = ['open-project', 'open-demo', 'save-project', 'undo', 'redo'] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/**
 * All that a shell does for the window, one task each. The window never names a place on disk: the shell asks the user,
 * or uses the project it was started with. Bad input comes back as problems; `null` = the user chose nothing.
 */
export interface DesktopApi {
  /** The project the program was started on; `null` = none. */
  openGiven(): Promise<Result<OpenedProject> | null>;
  openDemo(): Promise<Result<OpenedProject>>;
  /** The example's files, to take its parts from; what is open stays open. */
  exampleParts(): Promise<Result<OpenedProject>>;
  /** What was opened last could be read and is on the bench: only from now on is it what `saveProject` writes to. */
  taken(): Promise<void>;
  /** A project that stands nowhere yet is on the bench: saving it asks where, and touches no project opened before. */
  beginNew(): Promise<void>;
  chooseProject(): Promise<Result<OpenedProject> | null>;
  /** Projects opened lately, last first: as long as the shell can remember them, at least for this sitting. */
  recentProjects(): Promise<readonly RecentProject[]>;
  openRecent(id: string): Promise<Result<OpenedProject>>;
  /** Takes one off the list, and leaves its files alone; answers what is left. */
  forgetRecent(id: string): Promise<readonly RecentProject[]>;
  /** Files to bring into a project: meshes or tables, named by their plain file name. */
  chooseFiles(): Promise<Result<readonly NamedFile[]> | null>;
  /**
   * Saves the open project; `added` are files it names that are not yet beside it, `changed` part tables that are written
   * over those there.
   */
  saveProject(
    projectText: string,
    added?: readonly NamedFile[],
    changed?: readonly NamedFile[],
  ): Promise<Result<Saved>>;
  /** Saves one file where the user wants it. */
  saveFile(name: string, bytes: Uint8Array): Promise<Result<Saved>>;
  /** Saves several files into one folder that the user chooses. */
  saveFiles(files: readonly NamedFile[]): Promise<Result<Saved>>;
  /** The menu's commands; the answer stops listening. */
  onMenu(listener: (command: MenuCommand) => void): () => void;
}
