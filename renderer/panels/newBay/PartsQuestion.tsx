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
    <div className="new-bay-ask">
      <DrawerPicture filled={parts === 'example'} />
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
    </div>
  );
}

/** Where the compartments of the drawer stand in its picture, px from its left edge, and what lies in each. */
const COMPARTMENTS = [
  { x: 30, words: 'hoses' },
  { x: 164, words: 'ends' },
  { x: 298, words: 'sleeves' },
] as const;

/** The drawer from above: a coil, an end and a sleeve in their compartments, or nothing yet. */
function DrawerPicture({ filled }: { filled: boolean }) {
  return (
    <svg className="outline drawer-picture" width="460" height="260" viewBox="0 0 460 260" aria-hidden="true">
      <path className="drawer-box" d="M20 26H440V206H20ZM154 26V206M288 26V206" />
      <path className="drawer-box" d="M14 206H446V222H14ZM200 222q30 20 60 0" />
      {filled && (
        <>
          {[46, 34, 22].map((radius) => (
            <circle key={radius} className="drawer-hose" cx="87" cy="112" r={radius} />
          ))}
          <path className="drawer-end" d="M186 148V112q0 -22 22 -22H262" />
          <path className="drawer-collar" d="M222 76h40v28h-40ZM172 148h28v18h-28Z" />
          <path className="drawer-sleeve" d="M310 66h36v94h-36ZM366 66h36v94h-36Z" />
        </>
      )}
      {COMPARTMENTS.map(({ x, words }) => (
        <text key={words} className="outline-words" x={x} y="50">
          {words}
        </text>
      ))}
    </svg>
  );
}
