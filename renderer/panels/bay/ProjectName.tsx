import type { Project } from '../../../shared/document/project/schema.ts';
import { setProjectName, setProjectNote } from '../../state/edits/projectEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { TextField } from '../../widgets/TextField.tsx';

/** What the project is called, and a note on it; folded away, since it is seldom changed. */
export function ProjectName({ project }: { project: Project }) {
  const { document } = useBench();
  return (
    <details className="named-lengths">
      <summary>What this project is called</summary>
      <div className="changes">
        <TextField
          label="Name, on every paper"
          value={project.name}
          onSet={(name) => document.edit('name of the project', (now) => setProjectName(now, name))}
        />
        <TextField
          label="Note"
          value={project.note ?? ''}
          hint="none"
          mayBeEmpty
          onSet={(note) => document.edit('note on the project', (now) => setProjectNote(now, note))}
        />
      </div>
    </details>
  );
}
