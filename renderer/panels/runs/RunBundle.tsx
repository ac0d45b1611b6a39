import type { Project, Run } from '../../../shared/document/project/schema.ts';
import { bundleOfRun, setBundleGap, setBundleName, tieRuns, untieRun } from '../../state/edits/bundleEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';
import { PickOne } from '../PickOne.tsx';

/** The hoses that this one is tied to, side by side; between them the bundle's gap is asked, not the spacing of hoses. */
export function RunBundle({ run, project }: { run: Run; project: Project }) {
  const { document } = useBench();
  const bundle = bundleOfRun(project, run.id);
  const others = project.runs.filter(({ id }) => id !== run.id && bundle?.runs.includes(id) !== true);
  const mates = project.runs.filter(({ id }) => id !== run.id && bundle?.runs.includes(id) === true);
  if (others.length === 0 && bundle === undefined) return null;
  return (
    <section className="changes" aria-label="Tied to other hoses">
      <h3>Tied to other hoses</h3>
      {bundle !== undefined && (
        <>
          <p>Lies side by side with {mates.map(({ name }) => name).join(', ')}.</p>
          <TextField
            label="Name of the bundle"
            value={bundle.name}
            onSet={(name) => document.edit('name of the bundle', (now) => setBundleName(now, bundle.id, name))}
          />
          <MaybeLengthField
            label="From hose to hose"
            hint="they touch; such as 6 mm for a separator"
            mayBeZero
            mm={bundle.gapMm}
            onSet={(mm) => document.edit('gap of the bundle', (now) => setBundleGap(now, bundle.id, mm))}
          />
          <div className="support-buttons">
            <Button onPress={() => document.edit('untie the hose', (now) => untieRun(now, run.id))}>
              Take it out of the bundle
            </Button>
          </div>
        </>
      )}
      {others.length > 0 && (
        <PickOne
          label={bundle === undefined ? 'A hose beside it' : 'One more beside it'}
          hint="choose a run"
          options={others.map(({ id, name }) => ({ value: id, label: name }))}
          act="Tie them"
          onAct={(other) => document.edit('tie hoses', (now) => tieRuns(now, run.id, other))}
        />
      )}
    </section>
  );
}
