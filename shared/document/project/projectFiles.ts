/** A file by its path relative to the project file, with forward slashes. */
export interface NamedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A project as its files stand on disk: `project.json` text, and every mesh and table it names. */
export interface ProjectFiles {
  readonly projectText: string;
  readonly files: readonly NamedFile[];
}
