import type { Project } from '../../../shared/document/project/schema.ts';
import { bringBack, leaveOut } from '../../state/edits/leftOutEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { PickOne } from '../PickOne.tsx';

/** Parts of the scan that will not be there when the hoses are: neither drawn nor kept clear of. */
export function LeftOut({ project, names }: { project: Project; names: readonly string[] }) {
  const { document } = useBench();
  const out = project.bay.leftOut ?? [];
  return (
    <section className="bay-parts" aria-label="Left out of the scan">
      <h3>Left out of the scan</h3>
      <p className="teach">
        Old pipes, a stand, a crane: what is not there when the hoses are. It is neither drawn nor kept clear of.
      </p>
      {out.length > 0 && (
        <ul className="supports" aria-label="Parts left out">
          {out.map((name) => (
            <li key={name} className="support support-asked">
              <span className="support-name">{name}</span>
              <Button
                name={`Bring back ${name}`}
                onPress={() => document.edit('bring a part back', (now) => bringBack(now, name))}
              >
                Bring back
              </Button>
            </li>
          ))}
        </ul>
      )}
      <PickOne
        label="A part that is not there"
        hint="choose a part"
        options={names.map((name) => ({ value: name, label: name }))}
        act="Leave it out"
        onAct={(name) => document.edit('leave a part out', (now) => leaveOut(now, name))}
      />
    </section>
  );
}
