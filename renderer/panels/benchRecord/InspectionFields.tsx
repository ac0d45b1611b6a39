import { useState } from 'react';
import { inspectionOf, lookText } from '../../../shared/document/inspection/inspectionOf.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import type { Inspection, Project } from '../../../shared/document/project/schema.ts';
import { ruleValue } from '../../../shared/document/rules/index.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { DAY, DAY_HINT, DAY_WRONG } from '../asBuilt/day.ts';
import { Length } from '../Length.tsx';

/** When a fitted hose was looked over, what was found, where to look, and when it is due again. */
export function InspectionFields({ run, lay, project }: { run: ResolvedRun; lay: Lay | undefined; project: Project }) {
  const { onBuilt } = useBench();
  const months = ruleValue(project, 'inspection-months', run.run.id).value;
  const busy = useJobs((jobs) => jobs.current !== null);
  const seen = run.run.asBuilt?.inspections ?? [];
  const { dueOn, places, removal } = inspectionOf(run, lay, months);
  const set = (inspections: readonly Inspection[]): void => {
    if (busy) return;
    if (inspections.length === 0) void onBuilt.takeBack(run.run.id, 'inspections');
    else void onBuilt.write(run.run.id, { inspections: [...inspections] });
  };
  if (run.run.asBuilt?.fittedOn === undefined)
    return <p className="teach">Once it is written down when the hose was fitted, it can be looked over from here.</p>;
  return (
    <section aria-label="Looked over">
      <h3>Looked over</h3>
      {dueOn !== undefined && <p>Due again on {dueOn}.</p>}
      {(places.length > 0 || removal.length > 0) && (
        <details className="named-lengths">
          <summary>Where to look</summary>
          <ul className="teach">
            {places.map((place) => (
              <li key={`${place.at.arcLengthMm}${place.why}`}>
                <Length mm={place.at.arcLengthMm} /> from shoulder A, {lookText(place)}
              </li>
            ))}
            {removal.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
      {seen.length > 0 && (
        <ol className="supports" aria-label="Looks taken">
          {seen.map((look, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two looks of one day may say the same
            <li key={i} className="support support-asked">
              <span className="support-name">
                {look.on}: {look.found ?? 'nothing found'}
                {look.found !== undefined &&
                  (look.closedOn === undefined ? ' (open)' : `, put right on ${look.closedOn}`)}
              </span>
              <Button name={`Remove the look of ${look.on}`} onPress={() => set(seen.filter((_, at) => at !== i))}>
                Remove
              </Button>
              {look.found !== undefined && look.closedOn === undefined && (
                <ClosedOn onSet={(closedOn) => set(seen.map((one, at) => (at === i ? { ...one, closedOn } : one)))} />
              )}
            </li>
          ))}
        </ol>
      )}
      <NewLook key={`${run.run.id}${seen.length}`} onWrite={(look) => set([...seen, look])} />
    </section>
  );
}

function ClosedOn({ onSet }: { onSet: (day: string) => void }) {
  return (
    <TextField
      label="Put right on"
      value=""
      hint={DAY_HINT}
      mayBeEmpty
      takes={(on) => on === '' || DAY.test(on)}
      wrongWords={DAY_WRONG}
      onSet={(on) => on !== '' && onSet(on)}
    />
  );
}

function NewLook({ onWrite }: { onWrite: (look: Inspection) => void }) {
  const [on, setOn] = useState('');
  const [found, setFound] = useState('');
  return (
    <>
      <TextField
        label="Looked over on"
        value={on}
        hint={DAY_HINT}
        mayBeEmpty
        takes={(day) => day === '' || DAY.test(day)}
        wrongWords={DAY_WRONG}
        onSet={setOn}
      />
      <TextField label="What was found" value={found} hint="nothing" mayBeEmpty onSet={setFound} />
      <Button
        disabled={!DAY.test(on)}
        onPress={() => onWrite({ on, ...(found.trim() === '' ? {} : { found: found.trim() }) })}
      >
        Write this look down
      </Button>
    </>
  );
}
