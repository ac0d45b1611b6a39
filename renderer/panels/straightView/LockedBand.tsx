import { useRef } from 'react';
import { useStore } from 'zustand';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Lock } from '../../../shared/document/project/schema.ts';
import { type LockGrip, slidStretch, stretchOf } from '../../state/edits/lockEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { TREMBLE_PX } from './SupportMark.tsx';
import type { StraightScale } from './scale.ts';

interface LockedBandProps {
  readonly lock: Lock;
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly thickPx: number;
}

/** px to either side of a locked stretch's end within which it is pulled by that end. */
const GRIP_PX = 7;

/** A locked stretch is wrapped, as it is in the bay. Pulled by one of its ends it grows or shrinks, by its middle it moves. */
export function LockedBand({ lock, lay, scale, middlePx, thickPx }: LockedBandProps) {
  const { hand } = useBench();
  const slid = useStore(hand, ({ slidLock }) => (slidLock?.lock === lock.id ? slidLock.to : null));
  const pull = useLockPull(lock, lay, scale);
  const { fromMm, toMm } = slid ?? stretchOf(lay, lock);
  const [from, to] = [scale.x(fromMm), scale.x(toMm)];
  const top = middlePx - thickPx / 2 - 2;
  const tall = thickPx + 4;
  const grip = (at: 'from' | 'to', x: number) => (
    <g {...pull(at)} className="locked-grip">
      <rect x={x - GRIP_PX} y={top - 3} width={GRIP_PX * 2} height={tall + 6} />
      <path d={`M${x} ${top - 4} v${tall + 8}`} />
    </g>
  );
  return (
    <g className={slid === null ? 'locked' : 'locked locked-slid'}>
      <rect {...pull('whole')} className="locked-band" x={from} y={top} width={Math.max(1, to - from)} height={tall} />
      {grip('from', from)}
      {grip('to', to)}
    </g>
  );
}

/** The pointer's handlers for each part of a locked stretch that can be pulled; one step back when let go. */
function useLockPull(lock: Lock, lay: Lay, scale: StraightScale) {
  const { hand, byHand } = useBench();
  const pressedPx = useRef(0);
  const slides = useRef(false);
  return (grip: LockGrip) => ({
    onPointerDown: (event: React.PointerEvent): void => {
      if (event.button !== 0 || hand.getState().tool.kind !== 'none') return;
      event.stopPropagation();
      event.currentTarget.setPointerCapture(event.pointerId);
      pressedPx.current = event.clientX;
      slides.current = false;
    },
    onPointerMove: (event: React.PointerEvent): void => {
      if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
      const byPx = event.clientX - pressedPx.current;
      // Once let go by Escape the stretch is not taken again before the next press.
      if (slides.current ? hand.getState().slidLock === null : Math.abs(byPx) <= TREMBLE_PX) return;
      slides.current = true;
      const to = slidStretch(lay, stretchOf(lay, lock), grip, byPx / scale.pxPerMm);
      hand.set({ slidLock: { lock: lock.id, to } });
    },
    onPointerUp: (): void => {
      const { slidLock } = hand.getState();
      if (slidLock?.lock === lock.id) byHand.relock(lock.id, slidLock.to);
    },
    onPointerCancel: (): void => hand.set({ slidLock: null }),
  });
}
