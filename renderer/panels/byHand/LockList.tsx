import { useStore } from 'zustand';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { middleThird, SHORTEST_LOCK_MM, type Stretch, stretchOf } from '../../state/edits/lockEdits.ts';
import { freePart } from '../../state/supportPlaces.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';
import { LengthField } from '../LengthField.tsx';

/** Stretches that stay as they lie, and the one that is marked to be locked. */
export function LockList({ run, lay }: { run: Run; lay: Lay }) {
  const { hand, byHand } = useBench();
  const stretch = useStore(hand, (state) => state.stretch);
  const whole = freePart(lay);
  const mark = (to: Stretch): void => hand.set({ stretch: to });
  return (
    <div className="locks">
      {(run.locks ?? []).map((lock, i) => {
        const { fromMm, toMm } = stretchOf(lay, lock);
        return (
          <div key={lock.id} className="support support-asked">
            <span className="support-name">
              Locked <Length mm={fromMm} /> to <Length mm={toMm} />
            </span>
            <Button name={`Unlock stretch ${i + 1}`} onPress={() => byHand.unlock(run.id, lock.id)}>
              Unlock
            </Button>
          </div>
        );
      })}
      {stretch === null ? (
        <>
          <p className="teach">
            To lock a stretch as it lies, drag along the rule under the straight hose, or mark one by numbers.
          </p>
          <Button hint="Key g" onPress={() => mark(middleThird(lay))}>
            Mark a stretch <kbd>g</kbd>
          </Button>
        </>
      ) : (
        <fieldset className="stretch">
          <legend>Stretch to lock, from shoulder A</legend>
          <LengthField
            label="From"
            mm={stretch.fromMm}
            lowMm={whole.fromMm}
            highMm={Math.max(whole.fromMm, stretch.toMm - SHORTEST_LOCK_MM)}
            onSet={(fromMm) => mark({ ...stretch, fromMm })}
          />
          <LengthField
            label="To"
            mm={stretch.toMm}
            lowMm={Math.min(whole.toMm, stretch.fromMm + SHORTEST_LOCK_MM)}
            highMm={whole.toMm}
            onSet={(toMm) => mark({ ...stretch, toMm })}
          />
          <div className="support-buttons">
            <Button onPress={() => byHand.lock()} hint="Key g">
              Lock it <kbd>g</kbd>
            </Button>
            <Button onPress={() => hand.set({ stretch: null })}>Leave it</Button>
          </div>
        </fieldset>
      )}
    </div>
  );
}
