import type { Run } from '../../../shared/document/project/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { setBled, setFlow, setOnePlane } from '../../state/edits/runEdits.ts';
import { supportName } from '../../state/edits/supportEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { FigureField } from './FigureField.tsx';

/** What flows and which way, and what the hose's shape owes to it; folded away, since it need not be known. */
export function RunFlowFields({ run }: { run: Run }) {
  const { document } = useBench();
  const falls = run.service.fluid === 'coolant' || run.service.purpose === 'coolant' || run.bledAtCrest === true;
  return (
    <details className="named-lengths">
      <summary>Flow and shape, where known</summary>
      <div className="changes">
        <Choice
          label="Flows"
          value={run.flow ?? 'a-to-b'}
          options={[
            { value: 'a-to-b', label: 'from END A to END B' },
            { value: 'b-to-a', label: 'from END B to END A' },
          ]}
          onChoose={(flow) =>
            document.edit('which way it flows', (project) =>
              setFlow(project, run.id, flow === 'b-to-a' ? 'b-to-a' : 'a-to-b'),
            )
          }
        />
        <FigureField
          run={run}
          figure="flowLPerMin"
          label="How much flows"
          unit="L/min"
          low={0}
          high={1000}
          step={1}
          decimals={1}
        />
        <FigureField
          run={run}
          figure="viscosityMm2PerS"
          label="Kinematic viscosity, running"
          unit="mm²/s"
          low={0.1}
          high={5000}
          step={1}
          decimals={1}
        />
        {falls && (
          <label className="check">
            <input
              type="checkbox"
              checked={run.bledAtCrest === true}
              onChange={(event) =>
                document.edit('bleed at its highest place', (project) => setBled(project, run.id, event.target.checked))
              }
            />
            A bleed is fitted where it is highest
          </label>
        )}
        <OnePlane run={run} />
      </div>
    </details>
  );
}

/** Stretches between what holds the hose that shall lie in one plane. */
function OnePlane({ run }: { run: Run }) {
  const { document } = useBench();
  const holding = run.supports.filter(({ kind }) => kind !== 'waypoint');
  const stretches = [
    { from: 'a', name: 'END A' },
    ...holding.map((support) => ({
      from: support.id,
      name: supportName(run.supports, support, SUPPORT_WORDS[support.kind]),
    })),
  ];
  return (
    <fieldset className="one-plane">
      <legend>Lies in one plane</legend>
      {stretches.map(({ from, name }, i) => (
        <label className="check" key={from}>
          <input
            type="checkbox"
            checked={run.onePlane?.includes(from) === true}
            onChange={(event) =>
              document.edit('stretch in one plane', (project) =>
                setOnePlane(project, run.id, from, event.target.checked),
              )
            }
          />
          {name} to {stretches[i + 1]?.name ?? 'END B'}
        </label>
      ))}
    </fieldset>
  );
}
