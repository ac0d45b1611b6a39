import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import type { JobsStore } from './jobsStore.ts';

/**
 * Reads the bay's picture again whenever the project says that the bay lies otherwise (its scale, its level, a unit), and
 * when such a step is taken back; as soon as no other work is under way.
 */
export function keepPicture(
  document: DocumentStore,
  jobs: JobsStore,
  filesNow: () => { readonly files: ProjectFiles } | null,
): void {
  let drawn: { readonly bay: OpenDocument['bay']; readonly key: string } | null = null;
  const look = (): void => {
    const { open } = document.getState();
    if (open === null || open.bay === null) {
      drawn = null;
      return;
    }
    const key = lieOf(open);
    if (drawn === null || drawn.bay !== open.bay) drawn = { bay: open.bay, key };
    if (drawn.key === key || jobs.getState().current !== null) return;
    const now = filesNow();
    if (now === null) return;
    // Marked as drawn before it is, so that a reading that fails is not begun over and over.
    drawn = { bay: open.bay, key };
    void jobs.work('Reading the bay again', 'openProject', now.files).then((output) => {
      if (output !== null) document.bayRead(output.bay, output.warnings);
    });
  };
  document.subscribe(look);
  jobs.subscribe(look);
}

/** How the meshes lie: what their picture depends on. */
function lieOf({ history }: OpenDocument): string {
  const { meshes, scale, level, cutOuts, leftOut } = history.present.bay;
  return JSON.stringify([meshes, scale, level, cutOuts, leftOut]);
}
