import type { Run } from '../../../shared/document/project/schema.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { layOf, RUN_STATE_WORDS } from '../../state/runState.ts';
import { useBench, useDocument, useJobs, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';
import { Length } from '../Length.tsx';
import { STATE_SHAPES } from '../runStateShape.ts';
import { useShownWhen } from '../useShownWhen.ts';
import { useShownRunState } from './useShownRunState.ts';

/** Every run with its state in a word and a shape, and what to cut. */
export function RunList() {
  const bench = useBench();
  const open = useDocument((state) => state.open);
  const busy = useJobs((jobs) => jobs.current !== null);
  const chosen = useSession((session) => session.run);
  if (open === null) return null;
  const { runs } = open.history.present;
  return (
    <section className="slip runs" aria-labelledby="runs-title">
      <div className="slip-head">
        <h2 id="runs-title">Runs</h2>
        <Button look="quiet" hint="Key r" onPress={bench.onRuns.state}>
          New run
        </Button>
        <Button look="main" disabled={busy || runs.length === 0} onPress={() => void bench.layAll()}>
          Lay all runs
        </Button>
      </div>
      {runs.length === 0 && <p className="teach">No run yet. A run joins two ports with one hose.</p>}
      <ul className="run-list" aria-label="Runs">
        {runs.map((run) => (
          <RunRow key={run.id} run={run} open={open} chosen={run.id === chosen} />
        ))}
      </ul>
    </section>
  );
}

function RunRow({ run, open, chosen }: { run: Run; open: OpenDocument; chosen: boolean }) {
  const { session, hand } = useBench();
  const row = useShownWhen<HTMLLIElement>(chosen);
  const state = useShownRunState(open, run.id) ?? 'not-laid';
  const lay = layOf(open, run.id);
  return (
    <li ref={row}>
      <button
        type="button"
        className={`run-row state-${state}`}
        aria-current={chosen ? 'true' : undefined}
        onClick={() => {
          session.choose(run.id);
          hand.set({ stating: false });
          session.goTo('runs');
        }}
      >
        <Shape kind={STATE_SHAPES[state]} />
        <span className="run-name">{run.name}</span>
        <span className="run-state">{RUN_STATE_WORDS[state]}</span>
        <span className="run-cut">
          {state === 'found' ? (
            <span className="unseen">it may yet be laid otherwise; its length comes when the laying ends</span>
          ) : lay === undefined || lay.outcome === 'no-way' ? (
            '–'
          ) : (
            <Length mm={lay.cutLengthMm} rounding="up" both />
          )}
        </span>
      </button>
    </li>
  );
}
