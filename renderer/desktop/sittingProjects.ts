import type { Result } from '../../shared/base/result.ts';
import type { OpenedProject, RecentProject } from '../../shared/desktop/contract.ts';
import { type PickedFile, projectFromFolder } from './projectFromFolder.ts';

interface Remembered {
  readonly recent: RecentProject;
  open(): Promise<Result<OpenedProject> | null>;
}

const GIVEN_WHERE = 'the project this window was started on';
const PICKED_WHERE = 'a folder of this machine; remembered until this window is closed';

/**
 * What a browser can remember: a page may read a folder again that was picked while it is open, and no longer; the local
 * server knows the project it was started on. `openGiven` asks the server for that one.
 */
export function sittingProjects(openGiven: () => Promise<Result<OpenedProject> | null>) {
  let remembered: readonly Remembered[] = [];
  let picks = 0;
  const list = (): readonly RecentProject[] => remembered.map(({ recent }) => recent);
  const put = (recent: Omit<RecentProject, 'missing'>, open: Remembered['open']): void => {
    remembered = [
      { recent: { ...recent, missing: false }, open },
      ...remembered.filter((other) => other.recent.id !== recent.id),
    ];
  };
  return {
    list,
    /** The project that the server was started on, as it was opened; the example has its own button. */
    given: (project: Result<OpenedProject> | null): Result<OpenedProject> | null => {
      if (project?.ok && project.value.savesInPlace)
        put({ id: 'given', label: project.value.label, where: GIVEN_WHERE }, openGiven);
      return project;
    },
    /** A folder that the user picked. */
    picked: async (files: readonly PickedFile[]): Promise<Result<OpenedProject>> => {
      const project = await projectFromFolder(files);
      if (project.ok) {
        const id = `picked-${++picks}`;
        put({ id, label: project.value.label, where: PICKED_WHERE }, () => pickedAgain(files));
      }
      return project;
    },
    open: async (id: string): Promise<Result<OpenedProject> | null> => {
      const one = remembered.find(({ recent }) => recent.id === id);
      if (one === undefined) return null;
      const project = await one.open();
      const missing = project?.ok !== true;
      remembered = remembered.map((other) => (other === one ? { ...one, recent: { ...one.recent, missing } } : other));
      return project;
    },
    forget: (id: string): readonly RecentProject[] => {
      remembered = remembered.filter(({ recent }) => recent.id !== id);
      return list();
    },
  };
}

/** A file that was moved or changed since it was picked can no longer be read by the page. */
async function pickedAgain(files: readonly PickedFile[]): Promise<Result<OpenedProject>> {
  try {
    return await projectFromFolder(files);
  } catch {
    const message = 'its files were moved or changed since; open the folder again';
    return { ok: false, problems: [{ path: '', message }] };
  }
}
