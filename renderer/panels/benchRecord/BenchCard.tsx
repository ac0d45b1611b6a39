import { MADE_WORDS, type MadeState, madeCounts, madeState } from '../../state/benchProgress.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { layOf } from '../../state/runState.ts';
import { useDocument, useSession } from '../../state/useBench.ts';
import { BuiltSection } from '../asBuilt/BuiltSection.tsx';
import { SystemTestField } from '../asBuilt/SystemTestField.tsx';
import { SafetyLines } from '../papers/PapersCard.tsx';
import { RunMaking } from '../runs/RunMaking.tsx';
import { useResolvedRun } from '../runs/useResolvedRun.ts';
import { CrimpFields } from './CrimpFields.tsx';
import { FittedFields } from './FittedFields.tsx';
import { InspectionFields } from './InspectionFields.tsx';
import { ProofField } from './ProofField.tsx';
import { StockList } from './StockList.tsx';

/** The bench: what to cut from what, how the chosen hose is made up, and what was measured of it, as far as the shop has come. */
export function BenchCard() {
  const open = useDocument((state) => state.open);
  const chosen = useSession((session) => session.run);
  if (open === null) return null;
  const run = open.history.present.runs.find(({ id }) => id === chosen);
  return (
    <article className="slip card" aria-labelledby="bench-title">
      <h2 id="bench-title">Bench</h2>
      <Progress open={open} />
      {open.report === null ? (
        <p className="teach">
          Lay the runs first: what is cut, marked and tested here follows from a lay. Print the build sheets for the
          bench itself; what was measured there is written down here.
        </p>
      ) : (
        <StockList open={open} />
      )}
      {run === undefined ? (
        <p className="teach">Choose a run to write down what the bench measured of its hose.</p>
      ) : (
        <HoseRecord key={run.id} open={open} runId={run.id} />
      )}
      <SafetyLines />
    </article>
  );
}

const STATES = ['to-make', 'made', 'failed', 'proved', 'fitted'] as const satisfies readonly MadeState[];

function Progress({ open }: { open: OpenDocument }) {
  const counts = madeCounts(open.history.present);
  const said = STATES.filter((state) => counts[state] > 0).map((state) => `${counts[state]} ${MADE_WORDS[state]}`);
  return <p>{said.length === 0 ? 'No run is stated yet.' : `Hoses: ${said.join(', ')}.`}</p>;
}

/** Everything of one hose at the bench, in the order it is done. */
function HoseRecord({ open, runId }: { open: OpenDocument; runId: string }) {
  const project = open.history.present;
  const resolved = useResolvedRun(project, open.tables, runId);
  const lay = layOf(open, runId);
  if (resolved === undefined) return null;
  const { run } = resolved;
  return (
    <section className="bench-record" aria-label={`At the bench: ${run.name}`}>
      <h2>{run.name}</h2>
      <p className="state-line">{MADE_WORDS[madeState(run.asBuilt)]}</p>
      {lay === undefined || lay.outcome === 'no-way' ? (
        <p className="teach">Not laid: there is nothing to make it by yet.</p>
      ) : (
        <RunMaking lay={lay} project={project} tables={open.tables} />
      )}
      {lay?.outcome === 'laid' && <BuiltSection run={run} lay={lay} />}
      <CrimpFields run={resolved} />
      <ProofField run={resolved} />
      {lay?.outcome !== 'laid' && <SystemTestField run={run} />}
      <FittedFields run={resolved} project={project} tables={open.tables} />
      <InspectionFields run={resolved} lay={lay} project={project} />
    </section>
  );
}
