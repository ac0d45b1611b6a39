/** A file by its path relative to the project file, with forward slashes. */
export interface NamedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A project as its files stand on disk: `project.json` text, and every mesh and table it names. */
export interface ProjectFiles {
  readonly projectText: string;
  readonly files: readonly NamedFile[];
  /** the day, `YYYY-MM-DD`, by which the age of a hose is judged; absent = it is not */
  readonly today?: string;
}
