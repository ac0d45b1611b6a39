import { useState } from 'react';
import { useWidth } from '../../widgets/useWidth.ts';
import { Rule } from './Rule.tsx';
import type { StraightScale } from './scale.ts';

const LENGTH_MM = 400;
const HEIGHT_PX = 44;
/** px the rule's blank ends take, before its zero and after its last line. */
const BLANK = { beforePx: 11, afterPx: 62 };

/** The rule waiting on the bench for a hose. */
export function BareRule() {
  const [box, setBox] = useState<HTMLDivElement | null>(null);
  const widthPx = useWidth(box);
  const pxPerMm = Math.max(0.1, (widthPx - BLANK.beforePx - BLANK.afterPx) / LENGTH_MM);
  const scale: StraightScale = {
    pxPerMm,
    leftPx: 0,
    rightPx: widthPx,
    x: (mm) => BLANK.beforePx + mm * pxPerMm,
    arcAt: (px) => (px - BLANK.beforePx) / pxPerMm,
  };
  return (
    <div ref={setBox} className="bare-rule">
      <svg width={widthPx} height={HEIGHT_PX + 2} aria-hidden="true">
        <Rule lengthMm={LENGTH_MM} scale={scale} topPx={1} heightPx={HEIGHT_PX} />
      </svg>
    </div>
  );
}
