import { useRef } from 'react';
import { useStore } from 'zustand';
import type { ShownSupport } from '../../state/shownSupports.ts';
import { useBench } from '../../state/useBench.ts';

/** px that a click may tremble. */
export const TREMBLE_PX = 3;

interface SupportMarkProps {
  /** the pointer has gone so far with the mark in hand */
  readonly onSlide: (byPx: number) => void;
  readonly support: ShownSupport;
  readonly x: number;
  /** of a clamp whose part is stated; 0 = not known */
  readonly widthPx: number;
  readonly middlePx: number;
  readonly thickPx: number;
}

/** px. A clamp narrower than this on the drawing could not be taken hold of. */
const NARROWEST_PX = 8;

/** A clamp is a band across the hose, a pass-through a thin plate, a waypoint a loop round it. */
export function SupportMark({ support, x, widthPx, middlePx, thickPx, onSlide }: SupportMarkProps) {
  const { hand, byHand } = useBench();
  const pressedPx = useRef(0);
  const slides = useRef(false);
  const chosen = useStore(hand, (state) => state.support === support.id);
  const look = `clamp${support.proposed ? ' clamp-proposed' : ''}${chosen ? ' clamp-chosen' : ''}`;
  const half = thickPx / 2;
  const wide = Math.max(NARROWEST_PX, widthPx);
  return (
    <g
      className={look}
      onPointerDown={(event) => {
        if (support.proposed || hand.getState().tool.kind !== 'none') return;
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        pressedPx.current = event.clientX;
        slides.current = false;
        hand.set({ support: support.id });
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const byPx = event.clientX - pressedPx.current;
        // Once let go by Escape the mark is not taken again before the next press.
        if (slides.current ? hand.getState().hold === null : Math.abs(byPx) <= TREMBLE_PX) return;
        slides.current = true;
        onSlide(byPx);
      }}
      onPointerUp={() => void byHand.release()}
      onPointerCancel={() => byHand.letGo()}
    >
      {support.kind === 'clamp' && (
        <rect x={x - wide / 2} y={middlePx - half - 5} width={wide} height={thickPx + 10} rx={2} />
      )}
      {support.kind === 'pass-through' && <rect x={x - 1.5} y={middlePx - half - 13} width={3} height={thickPx + 26} />}
      {support.kind === 'waypoint' && <ellipse cx={x} cy={middlePx} rx={4.5} ry={half + 5} />}
    </g>
  );
}
