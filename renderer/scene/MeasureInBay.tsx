import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { useBench } from '../state/useBench.ts';
import { beadsAndLine } from './beadsAndLine.ts';
import { useDisposed } from './useDisposed.ts';

/** mm. A bead that is seen on any part. */
const BEAD_MM = 3.5;

/** The places that are measured between, or by which the bay is levelled, and the line from one to the next. Draws itself. */
export function MeasureInBay({ colour }: { colour: string }) {
  const { onMeasure, onSquareUp } = useBench();
  const invalidate = useThree((three) => three.invalidate);
  const drawn = useDisposed(() => beadsAndLine({ color: colour, beadMm: BEAD_MM, renderOrder: 27 }), [colour]);
  useEffect(() => {
    const draw = (): void => {
      const { from, to } = onMeasure.getState();
      const { picks } = onSquareUp.getState();
      const [first] = picks;
      const face = picks.length === 3 && first !== undefined ? [...picks, first] : picks;
      drawn.show(picks.length > 0 ? face : [from, to].flatMap((place) => (place === null ? [] : [place.point])));
      invalidate();
    };
    draw();
    const unsubscribe = [onMeasure.subscribe(draw), onSquareUp.subscribe(draw)];
    return () => {
      for (const stop of unsubscribe) stop();
    };
  }, [onMeasure, onSquareUp, drawn, invalidate]);
  return <primitive object={drawn.group} />;
}
