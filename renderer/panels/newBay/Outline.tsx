import { useMemo } from 'react';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import type { MeshLook } from '../../state/onNewBay.ts';

interface OutlineProps {
  readonly look: MeshLook;
  /** directions of the file that the picture has to its right and upwards */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly widthPx: number;
  readonly heightPx: number;
  /** a rule of this length, in the numbers of the file, drawn beside the scan at its scale */
  readonly rule?: { readonly length: number; readonly words: string };
}

const MARGIN_PX = 8;
const DOT_PX = 1.7;
/** px. Room under the scan for the rule. */
const RULE_PX = 34;

/** The scan seen along one of its axes, as dots; with a rule beside it, to see how large it would be. */
export function Outline({ look, right, up, widthPx, heightPx, rule }: OutlineProps) {
  const drawn = useMemo(() => project(look, right, up), [look, right, up]);
  const room = { w: widthPx - 2 * MARGIN_PX, h: heightPx - 2 * MARGIN_PX - (rule === undefined ? 0 : RULE_PX) };
  const wide = Math.max(drawn.width, rule === undefined ? 0 : Math.min(rule.length, 40 * drawn.width));
  const scale = Math.min(room.w / Math.max(wide, 1e-9), room.h / Math.max(drawn.height, 1e-9));
  const left = MARGIN_PX + (room.w - drawn.width * scale) / 2;
  const top = MARGIN_PX + (room.h - drawn.height * scale) / 2;
  const path = useMemo(() => {
    let d = '';
    for (let i = 0; i < drawn.at.length; i += 2)
      d += `M${(left + (drawn.at[i] as number) * scale).toFixed(1)} ${(top + (drawn.at[i + 1] as number) * scale).toFixed(1)}h0`;
    return d;
  }, [drawn, left, top, scale]);
  return (
    <svg
      className="outline"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
    >
      <path d={path} strokeWidth={DOT_PX} strokeLinecap="round" className="outline-dots" />
      {rule !== undefined && (
        <g transform={`translate(${widthPx / 2 - (rule.length * scale) / 2} ${heightPx - MARGIN_PX - 22})`}>
          <path d={`M0 0v9M0 4.5h${rule.length * scale}M${rule.length * scale} 0v9`} className="outline-rule" />
          <text x={(rule.length * scale) / 2} y={22} textAnchor="middle" className="outline-words">
            {rule.words}
          </text>
        </g>
      )}
    </svg>
  );
}

interface Projected {
  /** x rightwards and y downwards from the upper left corner, in the numbers of the file */
  readonly at: Float64Array;
  readonly width: number;
  readonly height: number;
}

function project({ sample }: MeshLook, right: Vec3, up: Vec3): Projected {
  const count = sample.length / 3;
  const at = new Float64Array(2 * count);
  let [left, most, low, high] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i < count; i++) {
    const along = (d: Vec3): number =>
      (sample[3 * i] as number) * d[0] + (sample[3 * i + 1] as number) * d[1] + (sample[3 * i + 2] as number) * d[2];
    const [x, y] = [along(right), along(up)];
    at[2 * i] = x;
    at[2 * i + 1] = y;
    left = Math.min(left, x);
    most = Math.max(most, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  for (let i = 0; i < count; i++) {
    at[2 * i] = (at[2 * i] as number) - left;
    at[2 * i + 1] = high - (at[2 * i + 1] as number);
  }
  return { at, width: most - left, height: high - low };
}
