import { STEPS, type Step } from '../../state/sessionStore.ts';
import { type Opening, stepOpenings } from '../../state/stepOpenings.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';

const STEP_WORDS: Record<Step, string> = {
  bay: 'Bay',
  ports: 'Ports',
  runs: 'Runs',
  checks: 'Checks',
  papers: 'Papers',
  bench: 'Bench',
};

/** The steps of the job, always in sight, each with what is still open in it. */
export function StepStrip() {
  const { session } = useBench();
  const open = useDocument((state) => state.open);
  const current = useSession((state) => state.step);
  const openings = stepOpenings(open);
  return (
    <nav aria-label="Steps of the job">
      <ol className="steps">
        {STEPS.map((step, i) => (
          <StepTab
            key={step}
            number={i + 1}
            step={step}
            opening={openings[step]}
            current={step === current}
            onGo={() => session.goTo(step)}
          />
        ))}
      </ol>
    </nav>
  );
}

interface StepTabProps {
  readonly number: number;
  readonly step: Step;
  readonly opening: Opening;
  readonly current: boolean;
  readonly onGo: () => void;
}

function StepTab({ number, step, opening, current, onGo }: StepTabProps) {
  const id = `step-${step}-opening`;
  return (
    <li>
      <button
        type="button"
        className={`step step-${opening.state}`}
        aria-current={current ? 'step' : undefined}
        aria-label={STEP_WORDS[step]}
        aria-describedby={id}
        onClick={onGo}
      >
        <span className="step-number">{number}</span>
        <span className="step-word">{STEP_WORDS[step]}</span>
        <span className="step-opening" id={id}>
          {opening.words}
        </span>
      </button>
    </li>
  );
}
