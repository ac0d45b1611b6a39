import { useStore } from 'zustand';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** While it is worked out what a moving skin sweeps: how far that is, and its way out. Everything else goes on beside it. */
export function SweepSlip() {
  const { onSweep } = useBench();
  const fraction = useStore(onSweep, (state) => state.fraction);
  if (fraction === null) return null;
  return (
    <section className="slip work-now" aria-label="What it sweeps">
      <div className="work-words">
        <b>Working out what it sweeps</b>
        <span>to be drawn in the bay</span>
      </div>
      <progress max={1} value={fraction} aria-label="Working out what it sweeps" />
      <Button onPress={onSweep.stop}>Stop</Button>
    </section>
  );
}
