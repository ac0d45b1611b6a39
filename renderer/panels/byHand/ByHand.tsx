import { useStore } from 'zustand';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import type { SupportKind } from '../../state/edits/supportEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { AskedFor } from './AskedFor.tsx';
import { LockList } from './LockList.tsx';
import { SupportRow } from './SupportRow.tsx';

const KINDS: readonly { readonly kind: SupportKind; readonly key: string }[] = [
  { kind: 'clamp', key: 'c' },
  { kind: 'pass-through', key: 'h' },
  { kind: 'waypoint', key: 'v' },
];

/** What the hand does to the run's hose: what holds it, in the order the hose meets it, and what is locked. */
export function ByHand({ run, lay }: { run: Run; lay: Lay | undefined }) {
  const { hand, byHand } = useBench();
  const tool = useStore(hand, (state) => state.tool);
  const chosen = useStore(hand, (state) => state.support);
  return (
    <section className="by-hand" aria-label="By hand">
      <h3>By hand</h3>
      <p className="teach">
        {lay !== undefined && lay.outcome !== 'no-way'
          ? 'Pull the hose in the bay: it follows. Let go for a waypoint, with Shift for a clamp; hold Alt to draw it along a surface. Or put on the hose:'
          : 'Once it is laid, the hose can be pulled in the bay. What is put here now, the hose has to meet:'}
      </p>
      <fieldset className="put-row">
        <legend className="unseen">Put on the hose</legend>
        {KINDS.map(({ kind, key }) => {
          const on = tool.kind === 'put' && tool.support === kind;
          return (
            <button
              key={kind}
              type="button"
              className="button button-plain"
              aria-pressed={on}
              title={`Key ${key}: where the pointer is, else in the middle`}
              onClick={(event) => {
                // A press by keyboard has no place of its own, so it puts at once.
                if (event.detail === 0) byHand.put(kind);
                else hand.take(on ? { kind: 'none' } : { kind: 'put', support: kind });
              }}
            >
              {SUPPORT_WORDS[kind]} <kbd>{key}</kbd>
            </button>
          );
        })}
      </fieldset>
      {run.supports.length > 0 && (
        <ol className="supports" aria-label="What holds the hose, END A to END B">
          {run.supports.map((support, at) => (
            <SupportRow key={support.id} run={run} lay={lay} support={support} at={at} chosen={support.id === chosen} />
          ))}
        </ol>
      )}
      {lay !== undefined && <AskedFor lay={lay} />}
      {lay !== undefined && lay.outcome !== 'no-way' && <LockList run={run} lay={lay} />}
      {lay !== undefined && lay.outcome !== 'no-way' && <Settle run={run} />}
    </section>
  );
}

function Settle({ run }: { run: Run }) {
  const { byHand } = useBench();
  return (
    <div className="settle">
      <Button onPress={() => void byHand.settle(run.id)} hint="Key e">
        Let it settle here
      </Button>
      <p className="teach">Keeps the way it goes. “Lay this run” looks for the best way anew.</p>
    </div>
  );
}
