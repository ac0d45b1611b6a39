import { assemblySteps } from '../../../shared/document/assembly/assemblySteps.ts';
import { inTheBaySteps } from '../../../shared/document/assembly/inTheBaySteps.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { type NutAdvice, nutTorque } from '../../../shared/document/torque/nutTorque.ts';
import { formatFlats, formatTorque, lengthWriter } from '../../../shared/sheets/format/index.ts';
import { useResolvedRun } from './useResolvedRun.ts';
import { Value } from './Value.tsx';

interface Shown {
  readonly lay: Lay;
  readonly project: Project;
  readonly tables: PartTables;
}

const STAGES = [
  ['before-second-end', 'Before the second end goes on'],
  ['both-ends-on', 'Once both ends are on'],
  ['proof', 'Proof test and after'],
  ['in-the-bay', 'Once it is in the bay'],
] as const;

/** How the hose is made up, step by step, and the torque of its nuts; both folded away until asked for. */
export function RunMaking({ lay, project, tables }: Shown) {
  const run = useResolvedRun(project, tables, lay.run);
  if (run === undefined) return null;
  return (
    <section aria-label="Making it up">
      <h3>Making it up</h3>
      <Steps run={run} lay={lay} project={project} />
      <Nuts run={run} />
    </section>
  );
}

function Steps({ run, lay, project }: { run: ResolvedRun; lay: Lay; project: Project }) {
  const write = lengthWriter(project.paperwork?.finestInch);
  const steps = [...assemblySteps(run, lay, write), ...inTheBaySteps(run, project.vehicle, write)];
  return (
    <details className="named-lengths">
      <summary>Steps at the bench</summary>
      {STAGES.filter(([stage]) => steps.some((step) => step.stage === stage)).map(([stage, title]) => (
        <div key={stage}>
          <h4>{title}</h4>
          <ol className="bench-steps">
            {steps
              .filter((step) => step.stage === stage)
              .map(({ id, words, why, caution }) => (
                <li key={id}>
                  {words}
                  {why !== undefined && <span className="value-note">{why}</span>}
                  {caution !== undefined && <strong>{caution}</strong>}
                </li>
              ))}
          </ol>
        </div>
      ))}
    </details>
  );
}

function Nuts({ run }: { run: ResolvedRun }) {
  return (
    <details className="named-lengths">
      <summary>Torque of the nuts</summary>
      {(['a', 'b'] as const).map((side) => {
        const { end, port, stack } = run[side];
        const mate = stack?.adapters[stack.adapters.length - 1]?.adapter.material ?? port.material;
        return <NutTables key={side} side={side} advice={nutTorque(end, mate)} />;
      })}
      <p className="teach">
        Published sets differ by as much as two to one: the figure of the end’s own maker comes first. Two wrenches, the
        hose held.
      </p>
    </details>
  );
}

function NutTables({ side, advice }: { side: 'a' | 'b'; advice: NutAdvice }) {
  const { own, torques, flats, note } = advice;
  return (
    <div>
      <h4>END {side.toUpperCase()}</h4>
      <dl className="values">
        {own !== undefined && (
          <Value name="The end’s own" note={`${own.source}; this one holds`}>
            <span className="figure">{formatTorque(own.torqueNm)}</span>
          </Value>
        )}
        {torques.map(({ table, leastNm, mostNm }) => (
          <Value key={table.id} name={table.name} note={table.source}>
            <span className="figure">{formatTorque(leastNm, mostNm)}</span>
          </Value>
        ))}
        {flats !== undefined && (
          <Value name={flats.name} note={flats.source}>
            <span className="figure">{formatFlats(flats.least, flats.most)} flats</span>
          </Value>
        )}
      </dl>
      {note !== undefined && <p className="teach">{note}</p>}
    </div>
  );
}
