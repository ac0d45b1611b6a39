import { useStore } from 'zustand';
import { looksForPlace } from '../../state/handStore.ts';
import { useBench } from '../../state/useBench.ts';

/** Where a tool that is led by keys points: the middle of the picture. */
export function MiddleMark() {
  const { hand } = useBench();
  const shown = useStore(hand, ({ tool, middle }) => looksForPlace(tool) && middle > 0);
  if (!shown) return null;
  return (
    <svg className="middle-mark" viewBox="-20 -20 40 40" aria-hidden="true">
      <path d="M-18 0H-6M6 0H18M0-18V-6M0 6V18" />
    </svg>
  );
}
