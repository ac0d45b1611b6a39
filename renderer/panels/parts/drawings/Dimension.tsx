import { createContext, useContext } from 'react';
import { type MeasureKind, READINGS } from '../../../../shared/document/parts/measure/readings.ts';

interface DrawnReadings {
  readonly kind: MeasureKind;
  /** key of the reading whose field has the focus */
  readonly active: string | null;
  /** keys of readings that are to be taken again */
  readonly again: readonly string[];
}

export const DrawnReadingsContext = createContext<DrawnReadings>({ kind: 'straight', active: null, again: [] });

type Place = readonly [x: number, y: number];

interface DimensionProps {
  /** key of the reading it shows */
  readonly of: string;
  readonly from: Place;
  readonly to: Place;
  /** how far the letter stands off the middle of the line, to the line's left */
  readonly aside?: number;
  /** ends of what is measured, from which thin lines lead to the dimension */
  readonly leads?: readonly [Place, Place];
}

/** A dimension line with its letter, as the field beside it has it; thick while that field is filled in. */
export function Dimension({ of, from, to, aside = 0, leads }: DimensionProps) {
  const { kind, active, again } = useContext(DrawnReadingsContext);
  const reading = READINGS[kind].find(({ key }) => key === of);
  if (reading === undefined) return null;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const middle: Place = [(from[0] + to[0]) / 2 + uy * aside, (from[1] + to[1]) / 2 - ux * aside];
  const look = [
    'dimension',
    ...(reading.need === 'check' ? ['dimension-check'] : []),
    ...(active === of ? ['dimension-active'] : []),
    ...(again.includes(of) ? ['dimension-again'] : []),
  ].join(' ');
  return (
    <g className={look}>
      {leads?.map((lead, i) => {
        const end = i === 0 ? from : to;
        return (
          <line key={lead.join(' ')} className="dimension-lead" x1={lead[0]} y1={lead[1]} x2={end[0]} y2={end[1]} />
        );
      })}
      <line x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
      <path d={head(from, -ux, -uy)} />
      <path d={head(to, ux, uy)} />
      <text x={middle[0]} y={middle[1] + 6}>
        {reading.letter}
      </text>
    </g>
  );
}

/** An arrow head at the end of a line that goes its way. */
function head([x, y]: Place, ux: number, uy: number): string {
  const corner = (side: number): string => `${x - 9 * ux - side * 3.5 * uy} ${y - 9 * uy + side * 3.5 * ux}`;
  return `M${x} ${y}L${corner(1)}L${corner(-1)}z`;
}

/** The ribbed tail that the hose is pushed on, tip at the left, to the shoulder at the right. */
export function Tail({
  tipX,
  shoulderX,
  axisY,
  thick,
}: {
  tipX: number;
  shoulderX: number;
  axisY: number;
  thick: number;
}) {
  const ribs = 5;
  const step = (shoulderX - tipX) / ribs;
  const half = thick / 2;
  const top = Array.from({ length: ribs }, (_, i) => {
    const x = tipX + i * step;
    return `L${x} ${axisY - half + 3}L${x + step * 0.75} ${axisY - half}L${x + step * 0.8} ${axisY - half + 3}`;
  }).join('');
  const bottom = Array.from({ length: ribs }, (_, k) => {
    const x = tipX + (ribs - 1 - k) * step;
    return `L${x + step * 0.8} ${axisY + half - 3}L${x + step * 0.75} ${axisY + half}L${x} ${axisY + half - 3}`;
  }).join('');
  return (
    <path
      className="drawn-part"
      d={`M${tipX} ${axisY}${top}L${shoulderX} ${axisY - half + 3}L${shoulderX} ${axisY + half - 3}${bottom}z`}
    />
  );
}

/** The flat plate that an end lies on, with its hatching. */
export function Plate({ fromX, toX, y }: { fromX: number; toX: number; y: number }) {
  const hatches = Array.from({ length: Math.floor((toX - fromX) / 14) }, (_, i) => fromX + 8 + i * 14);
  return (
    <g className="drawn-plate">
      <line x1={fromX} y1={y} x2={toX} y2={y} />
      {hatches.map((x) => (
        <line key={x} className="drawn-hatch" x1={x} y1={y} x2={x - 7} y2={y + 8} />
      ))}
    </g>
  );
}

export function AxisLine({ from, to }: { from: Place; to: Place }) {
  return <line className="drawn-axis" x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />;
}
