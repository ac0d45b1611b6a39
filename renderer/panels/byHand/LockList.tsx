import { useStore } from 'zustand';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Lock, Run } from '../../../shared/document/project/schema.ts';
import { middleThird, SHORTEST_LOCK_MM, type Stretch, stretchOf } from '../../state/edits/lockEdits.ts';
import { freePart } from '../../state/supportPlaces.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { LengthField } from '../LengthField.tsx';

/** Stretches that stay as they lie, and the one that is marked to be locked. */
export function LockList({ run, lay }: { run: Run; lay: Lay }) {
  const { hand, byHand } = useBench();
  const stretch = useStore(hand, (state) => state.stretch);
  const whole = freePart(lay);
  const mark = (to: Stretch): void => hand.set({ stretch: to });
  return (
    <div className="locks">
      {(run.locks ?? []).map((lock, i) => (
        <LockRow key={lock.id} run={run} lay={lay} lock={lock} number={i + 1} />
      ))}
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

/** A locked stretch with its ends; they also slide along the straight hose. */
function LockRow({ run, lay, lock, number }: { run: Run; lay: Lay; lock: Lock; number: number }) {
  const { byHand } = useBench();
  const whole = freePart(lay);
  const held = stretchOf(lay, lock);
  return (
    <fieldset className="stretch">
      <legend>Locked stretch {number}</legend>
      <LengthField
        label="From"
        mm={held.fromMm}
        lowMm={whole.fromMm}
        highMm={held.toMm - SHORTEST_LOCK_MM}
        onSet={(fromMm) => byHand.relock(lock.id, { ...held, fromMm }, true)}
      />
      <LengthField
        label="To"
        mm={held.toMm}
        lowMm={held.fromMm + SHORTEST_LOCK_MM}
        highMm={whole.toMm}
        onSet={(toMm) => byHand.relock(lock.id, { ...held, toMm }, true)}
      />
      <div className="support-buttons">
        <Button name={`Unlock stretch ${number}`} onPress={() => byHand.unlock(run.id, lock.id)}>
          Unlock
        </Button>
      </div>
    </fieldset>
  );
}
