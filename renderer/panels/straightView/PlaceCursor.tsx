import { useEffect, useRef } from 'react';
import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import { formatInches, formatMm } from '../../../shared/sheets/format/index.ts';
import { useBench } from '../../state/useBench.ts';
import type { StraightScale } from './scale.ts';
import { nearAt, nearPlaces } from './tracks.ts';

interface PlaceCursorProps {
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly topPx: number;
  readonly bottomPx: number;
  /** where its words stand: over the rule, where a place is read off */
  readonly wordsPx: number;
  readonly nameOf: (to: Clearance['to']) => string;
}

/** The line across hose, rule and tracks at the place pointed at, here or in the bay. Moves itself. */
export function PlaceCursor({ lay, scale, topPx, bottomPx, wordsPx, nameOf }: PlaceCursorProps) {
  const group = useRef<SVGGElement>(null);
  const words = useRef<SVGTextElement>(null);
  const { hover } = useBench();
  useEffect(() => {
    const places = nearPlaces(lay);
    const move = (): void => {
      const { place } = hover.getState();
      const on = place !== null && place.run === lay.run;
      group.current?.setAttribute('visibility', on ? 'visible' : 'hidden');
      if (!on) return;
      const slider = group.current?.closest('[role=slider]');
      slider?.setAttribute('aria-valuenow', place.arcLengthMm.toFixed(0));
      const near = nearAt(places, place.arcLengthMm);
      const beside = near === undefined ? '' : `${formatMm(near.clearanceMm, 'down')} to ${nameOf(near.to)}`;
      slider?.setAttribute(
        'aria-valuetext',
        `${formatMm(place.arcLengthMm)} from shoulder A${beside && `, ${beside}`}`,
      );
      group.current?.setAttribute('transform', `translate(${scale.x(place.arcLengthMm)} 0)`);
      if (words.current !== null) {
        words.current.textContent = `${formatMm(place.arcLengthMm)} · ${formatInches(place.arcLengthMm)}${beside && ` · ${beside}`}`;
        const late = place.arcLengthMm > lay.cutLengthMm * 0.5;
        words.current.setAttribute('text-anchor', late ? 'end' : 'start');
        words.current.setAttribute('x', late ? '-8' : '8');
      }
    };
    move();
    return hover.subscribe(move);
  }, [hover, lay, scale, nameOf]);
  return (
    <g ref={group} className="place" visibility="hidden">
      <line y1={topPx} y2={bottomPx} />
      <path d={`M-6 ${topPx} h12 l-6 8 z`} />
      <text ref={words} y={wordsPx} />
    </g>
  );
}
