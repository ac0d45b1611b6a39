import { dueOn, hoseLife } from '../../../shared/document/life/hoseLife.ts';
import { madeOn } from '../../../shared/document/life/madeOn.ts';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { DAY, DAY_HINT, DAY_WRONG } from '../asBuilt/day.ts';

interface Shown {
  readonly run: ResolvedRun;
  readonly project: Project;
  readonly tables: PartTables;
}

const NONE = '';

/** What the hose was cut from, when it went into the bay, and how long such a hose usually stays there. */
export function FittedFields({ run, project, tables }: Shown) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const { asBuilt, id } = run.run;
  const rolls = tables.rolls.filter(({ hose }) => hose === run.hose.id);
  return (
    <section aria-label="In service">
      <h3>In service</h3>
      {rolls.length > 0 && (
        <Choice
          label="Cut from"
          value={asBuilt?.roll ?? NONE}
          options={[
            { value: NONE, label: 'not written down' },
            ...rolls.map((roll) => ({ value: roll.id, label: `${roll.id}${roll.offcut === true ? ', offcut' : ''}` })),
          ]}
          onChoose={(roll) => {
            if (busy) return;
            if (roll === NONE) void onBuilt.takeBack(id, 'roll');
            else void onBuilt.write(id, { roll });
          }}
        />
      )}
      <TextField
        label="Fitted on"
        value={asBuilt?.fittedOn ?? ''}
        hint={DAY_HINT}
        mayBeEmpty
        takes={(on) => on === '' || DAY.test(on)}
        wrongWords={DAY_WRONG}
        onSet={(fittedOn) => {
          if (busy) return;
          if (fittedOn === '') void onBuilt.takeBack(id, 'fittedOn');
          else void onBuilt.write(id, { fittedOn });
        }}
      />
      <p className="teach">{lifeWords(run, project, tables)}</p>
    </section>
  );
}

function lifeWords(run: ResolvedRun, { vehicle }: Project, tables: PartTables): string {
  const { years, kind, source, dissent } = hoseLife(run.hose.core, run.run.service, vehicle);
  const roll = tables.rolls.find(({ id }) => id === run.run.asBuilt?.roll);
  const made = madeOn({ run: run.run, roll });
  const others = dissent === undefined ? '' : ` Others: ${dissent}.`;
  if (years === undefined) return `Life: ${kind}. ${source}.${others}`;
  const due = made === undefined ? '' : ` Made ${made.day}, ${made.by}: due ${dueOn(made.day, years)}.`;
  return `Life: ${kind}, usually ${years} years from the day it was made.${due} ${source}.${others}`;
}
