import { useStore } from 'zustand';
import { useBench } from '../../state/useBench.ts';

const CHOICES = [
  {
    parts: 'example',
    words: 'Example parts to try with',
    note: 'Invented hoses, ends and sleeves, marked as such on every paper. Put your own in their place before you cut.',
  },
  {
    parts: 'empty',
    words: 'An empty drawer',
    note: 'Type your parts in, bring in tables, or measure an end with caliper and square.',
  },
] as const;

/** What the drawer of parts begins with; it can be changed at any time. */
export function PartsQuestion() {
  const { onNewBay } = useBench();
  const parts = useStore(onNewBay, (state) => state.parts);
  return (
    <fieldset className="new-bay-choices">
      <legend>Begin with</legend>
      {CHOICES.map((choice) => (
        <label key={choice.parts}>
          <input
            type="radio"
            name="parts"
            checked={parts === choice.parts}
            onChange={() => onNewBay.set({ parts: choice.parts })}
          />
          <b>{choice.words}</b>
          <span>{choice.note}</span>
        </label>
      ))}
    </fieldset>
  );
}
