import { useStore } from 'zustand';
import type { Run } from '../../../shared/document/project/schema.ts';
import { LEAST_PICKS } from '../../state/onRod.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { LengthField } from '../LengthField.tsx';
import { StraightenedRod } from './StraightenedRod.tsx';

/** A rod bent on the job in place of the hose: its points, and the hose that they ask for. */
export function RodSection({ run }: { run: Run }) {
  const { onRod, hand } = useBench();
  const rod = useStore(onRod);
  const picking = useStore(hand, ({ tool }) => tool.kind === 'rod');
  const busy = useJobs((jobs) => jobs.current !== null);
  const here = rod.run === run.id;
  return (
    <section className="rod" aria-label="From a bent rod">
      <h3>From a bent rod</h3>
      <p className="teach">
        A rod bent on the job and scanned with the bay, or measured point by point: its length and its clock become the
        hose’s. Click along it in the bay from END A to END B, a point every 10 to 20 mm and closer in the bends.
      </p>
      <div className="support-buttons">
        <Button pressed={picking} hint="Key q" onPress={() => (picking ? hand.take({ kind: 'none' }) : onRod.begin())}>
          {picking ? 'Stop picking' : 'Pick along a rod'} <kbd>q</kbd>
        </Button>
        <Button onPress={() => void onRod.read()} hint="Rows of x, y, z in mm, along the rod's axis">
          Points from a file
        </Button>
      </div>
      {here && (
        <>
          <p className="rod-count" aria-live="polite">
            {rod.picks.length} {rod.picks.length === 1 ? 'point' : 'points'}
            {rod.picks.length < LEAST_PICKS && `, ${LEAST_PICKS} or more are needed`}
          </p>
          <LengthField
            label="Rod’s diameter"
            mm={rod.diameterMm}
            lowMm={0}
            highMm={60}
            onSet={(diameterMm) => onRod.set({ diameterMm })}
          />
          <fieldset className="rod-reach">
            <legend>The rod reaches</legend>
            {REACHES.map(({ reach, words }) => (
              <label key={reach}>
                <input
                  type="radio"
                  name="rod-reach"
                  checked={rod.reach === reach}
                  onChange={() => onRod.set({ reach })}
                />
                {words}
              </label>
            ))}
          </fieldset>
          <div className="support-buttons">
            <Button
              look="main"
              disabled={busy || rod.picks.length < LEAST_PICKS}
              onPress={() => void onRod.straighten()}
            >
              Straighten it
            </Button>
            <Button disabled={rod.picks.length === 0} hint="Backspace" onPress={onRod.takeBack}>
              Take the last point back
            </Button>
            <Button onPress={onRod.clear}>Put the rod away</Button>
          </div>
          {rod.straightened !== null && <StraightenedRod rod={rod.straightened} />}
        </>
      )}
    </section>
  );
}

const REACHES = [
  { reach: 'shoulders', words: 'from shoulder to shoulder: as the bare hose will be cut' },
  { reach: 'seats', words: 'from seat to seat along the hose’s axis: C of both ends is taken off' },
] as const;
