import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { MeshLook } from '../../state/onNewBay.ts';
import { BAY_QUESTIONS, type BayQuestion } from '../../state/onNewBay.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { PartsQuestion } from './PartsQuestion.tsx';
import { UncertaintyQuestion } from './UncertaintyQuestion.tsx';
import { UnitQuestion } from './UnitQuestion.tsx';
import { UpQuestion } from './UpQuestion.tsx';

const QUESTIONS: Record<BayQuestion, { title: string; Ask: React.ComponentType<{ look: MeshLook }> }> = {
  unit: { title: 'How large is it?', Ask: UnitQuestion },
  up: { title: 'Which way is up?', Ask: UpQuestion },
  uncertainty: { title: 'How far may the scan be off?', Ask: UncertaintyQuestion },
  parts: { title: 'What lies in the drawer?', Ask: PartsQuestion },
};

/** A scan on its way to the bench: what a mesh file does not say, asked once, one after the other. */
export function NewBay() {
  const { onNewBay } = useBench();
  const { look, question } = useStore(onNewBay);
  const busy = useJobs((jobs) => jobs.current !== null);
  const title = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each question is read out as it comes
  useEffect(() => title.current?.focus(), [question]);
  if (look === null) return null;
  const at = BAY_QUESTIONS.indexOf(question);
  const isLast = at === BAY_QUESTIONS.length - 1;
  const { title: words, Ask } = QUESTIONS[question];
  const goOn = (event: React.FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    if (busy || event.currentTarget.querySelector('[aria-invalid="true"]') !== null) return;
    if (isLast) void onNewBay.finish();
    else onNewBay.next();
  };
  return (
    <form className="new-bay" aria-labelledby="new-bay-title" noValidate onSubmit={goOn}>
      <p className="new-bay-file">
        {look.meshes.map(({ path }) => path).join(', ')} · {look.triangles.toLocaleString('en')} triangles ·{' '}
        {look.parts.length} {look.parts.length === 1 ? 'part' : 'parts'}
      </p>
      <h2 id="new-bay-title" ref={title} tabIndex={-1}>
        <span className="new-bay-count">
          {at + 1} of {BAY_QUESTIONS.length}
        </span>{' '}
        {words}
      </h2>
      <Ask look={look} />
      <div className="new-bay-buttons">
        <Button onPress={at === 0 ? onNewBay.clear : onNewBay.back} disabled={busy}>
          {at === 0 ? 'Leave it' : 'Back'}
        </Button>
        <button type="submit" className="button button-main" disabled={busy}>
          {isLast ? 'Put it on the bench' : 'Next'}
        </button>
      </div>
    </form>
  );
}
