import { useStore } from 'zustand';
import { GUIDE_STEPS } from '../../state/guide.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** The guide's present step, over the bay; it goes on by itself, can be gone on from, and can be left. */
export function GuideCard() {
  const { guide } = useBench();
  const at = useStore(guide, (state) => state.at);
  const step = at === null ? undefined : GUIDE_STEPS[at];
  if (at === null || step === undefined) return null;
  const isLast = at === GUIDE_STEPS.length - 1;
  return (
    <section className="slip guide" aria-label="A first lay, step by step" aria-live="polite">
      <p className="guide-count">
        {at + 1} of {GUIDE_STEPS.length}
      </p>
      <div className="work-words">
        <b>{step.title}</b>
        <span>{step.words}</span>
      </div>
      <div className="guide-buttons">
        <Button
          look={step.isDone === undefined ? 'main' : 'plain'}
          onPress={() => guide.setState({ at: isLast ? null : at + 1 })}
        >
          {isLast ? 'Done' : step.isDone === undefined ? 'Next' : 'Skip'}
        </Button>
        {!isLast && (
          <Button look="quiet" onPress={() => guide.setState({ at: null })}>
            Leave the guide
          </Button>
        )}
      </div>
    </section>
  );
}
