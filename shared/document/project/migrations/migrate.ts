import { invariant } from '../../../base/invariant.ts';

/** A project file's JSON before its shape is known. */
export type RawProject = Readonly<Record<string, unknown>>;

/** One step up in the version of the project file. */
export interface Migration {
  /** The version it reads; it writes the next. */
  readonly from: number;
  /** What changed, in a few words. */
  readonly title: string;
  /** Pure: a new object, the given one untouched. `version` is set by the caller. */
  readonly migrate: (raw: RawProject) => RawProject;
}

/**
 * Brings a raw project from version `from` up to the newest that the list knows, one step at a time. `from` is a whole
 * number from 1 to the newest. The list has no gaps: that is our duty, so a gap stops the program.
 */
export function migrate(raw: RawProject, from: number, migrations: readonly Migration[]): RawProject {
  migrations.forEach((m, i) => {
    invariant(m.from === i + 1, `migrate: entry ${i} of the list reads version ${m.from}, expected ${i + 1}`);
  });
  let current = raw;
  for (const step of migrations.slice(from - 1)) current = { ...step.migrate(current), version: step.from + 1 };
  return current;
}
