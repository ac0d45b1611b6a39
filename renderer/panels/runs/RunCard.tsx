import { useMemo } from 'react';
import { useStore } from 'zustand';
import { orderFindings } from '../../state/findingOrder.ts';
import { layOf, RUN_STATE_WORDS } from '../../state/runState.ts';
import { useBench, useDocument, useJobs, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';
import { BuiltSection } from '../asBuilt/BuiltSection.tsx';
import { ByHand } from '../byHand/ByHand.tsx';
import { EndTrialList } from '../endTrial/EndTrialList.tsx';
import { FindingList } from '../findings/FindingList.tsx';
import { MendList } from '../findings/MendList.tsx';
import { RodSection } from '../rod/RodSection.tsx';
import { STATE_SHAPES } from '../runStateShape.ts';
import { WaysRoundList } from '../waysRound/WaysRoundList.tsx';
import { ClockCard } from './ClockCard.tsx';
import { Nearest } from './Nearest.tsx';
import { NewRun } from './NewRun.tsx';
import { PosePlayer } from './PosePlayer.tsx';
import { RunBundle } from './RunBundle.tsx';
import { RunChanges } from './RunChanges.tsx';
import { RunFigures } from './RunFigures.tsx';
import { RunFlow } from './RunFlow.tsx';
import { RunHands } from './RunHands.tsx';
import { RunHeat } from './RunHeat.tsx';
import { RunMaking } from './RunMaking.tsx';
import { RunRock } from './RunRock.tsx';
import { RunService } from './RunService.tsx';
import { RunTaper } from './RunTaper.tsx';
import { useShownRunState } from './useShownRunState.ts';
import { serviceLine } from './words.ts';

/** The chosen run: its state, what was found, what to cut, how to clock it, and what it is made of. */
export function RunCard() {
  const bench = useBench();
  const open = useDocument((state) => state.open);
  const chosen = useSession((session) => session.run);
  const busy = useJobs((jobs) => jobs.current !== null);
  const findings = useMemo(() => orderFindings(open?.report?.findings ?? []), [open?.report]);
  const stating = useStore(bench.hand, (state) => state.stating);
  const run = open?.history.present.runs.find((r) => r.id === chosen);
  const state = useShownRunState(open, run?.id ?? null) ?? 'not-laid';
  if (stating) return <NewRun />;
  if (open === null || run === undefined) return <p className="teach">Choose a run to see its hose.</p>;
  const lay = layOf(open, run.id);
  const own = findings.filter(({ finding }) => finding.run === run.id);
  return (
    <article className="slip card" aria-label={`Run: ${run.name}`}>
      <div className={`slip-head state-${state}`}>
        <div>
          <h2>{run.name}</h2>
          <p className="state-line">
            <Shape kind={STATE_SHAPES[state]} size={18} /> {RUN_STATE_WORDS[state]}
          </p>
        </div>
        <Button disabled={busy} onPress={() => void bench.layRun(run.id)}>
          Lay this run
        </Button>
      </div>
      <p className="service">{serviceLine(run)}</p>
      {lay?.reason !== undefined && <p className="reason">{lay.reason}</p>}
      {lay?.givenUp?.map(({ wish, reason }) => (
        <p className="reason" key={`${wish}${reason}`}>
          {reason}
        </p>
      ))}
      {lay === undefined && (
        <p className="teach">
          {state === 'found'
            ? 'A way is found, pale in the bay. It may yet be laid otherwise; its length comes when the laying ends.'
            : 'Not laid yet. “Lay this run” finds the way the hose would really lie, then says where to cut and how to clock it.'}
        </p>
      )}
      {lay !== undefined && lay.outcome !== 'no-way' && <RunFigures lay={lay} state={state} />}
      {lay !== undefined && lay.outcome !== 'no-way' && <ClockCard lay={lay} />}
      {own.length > 0 && (
        <section>
          <h3>Found on this run</h3>
          {own.some(({ finding }) => finding.severity !== 'note') && (
            <Button disabled={busy} onPress={() => void bench.onMends.look(run.id)}>
              What would mend this run
            </Button>
          )}
          <MendList run={run.id} />
          <FindingList findings={own} />
        </section>
      )}
      {lay !== undefined && <RunFlow lay={lay} />}
      {lay !== undefined && <RunHeat lay={lay} />}
      {lay !== undefined && <RunHands lay={lay} report={open.report} project={open.history.present} />}
      {lay !== undefined && lay.outcome !== 'no-way' && (
        <RunMaking lay={lay} project={open.history.present} tables={open.tables} />
      )}
      {lay !== undefined && <RunRock lay={lay} project={open.history.present} />}
      {lay !== undefined && <PosePlayer lay={lay} />}
      {lay !== undefined && <RunTaper lay={lay} project={open.history.present} />}
      {lay !== undefined && <Nearest lay={lay} project={open.history.present} />}
      <ByHand run={run} lay={lay} />
      {lay?.outcome === 'laid' && <BuiltSection run={run} lay={lay} />}
      <RodSection run={run} />
      <RunChanges run={run} open={open} />
      <WaysRoundList run={run} project={open.history.present} />
      <EndTrialList run={run} open={open} />
      <RunBundle run={run} project={open.history.present} />
      <RunService run={run} />
    </article>
  );
}
