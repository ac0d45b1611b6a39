import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';

/** Another project is to come on the bench, and this one has changes that are nowhere else. */
export function LeavingSlip() {
  const { leaving } = useBench();
  const asked = useStore(leaving, (state) => state.asked);
  const slip = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked !== null) slip.current?.querySelector('button')?.focus();
  }, [asked]);
  if (asked === null) return null;
  return (
    <section
      ref={slip}
      className="slip notice notice-problem"
      role="alertdialog"
      aria-labelledby="leaving-title"
      aria-describedby="leaving-words"
    >
      <Shape kind="octagon" />
      <div>
        <b id="leaving-title">{asked} has changes that are not saved</b>
        <p id="leaving-words">What comes on the bench now takes its place.</p>
        <div className="support-buttons">
          <Button onPress={() => leaving.answer('save')}>Save it and go on</Button>
          <Button onPress={() => leaving.answer('drop')}>Let the changes go</Button>
          <Button onPress={() => leaving.answer('stay')} hint="Key Escape">
            Stay with it
          </Button>
        </div>
      </div>
    </section>
  );
}
