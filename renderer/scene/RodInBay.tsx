import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { onAxis } from '../state/onRod.ts';
import { useBench } from '../state/useBench.ts';
import { beadsAndLine } from './beadsAndLine.ts';
import { useDisposed } from './useDisposed.ts';

/** mm. A bead that stands out on a rod of any thickness. */
const BEAD_MM = 3.2;

/** The points picked along a bent rod, on its axis, joined in their order. Draws itself; React makes it once. */
export function RodInBay({ colour }: { colour: string }) {
  const { onRod } = useBench();
  const invalidate = useThree((three) => three.invalidate);
  const rod = useDisposed(() => beadsAndLine({ color: colour, beadMm: BEAD_MM, renderOrder: 24 }), [colour]);
  useEffect(() => {
    const draw = (): void => {
      const { picks, diameterMm } = onRod.getState();
      rod.show(picks.map((pick) => onAxis(pick, diameterMm)));
      invalidate();
    };
    draw();
    return onRod.subscribe(draw);
  }, [onRod, rod, invalidate]);
  return <primitive object={rod.group} />;
}
