import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { NumberedFinding } from '../../state/findingOrder.ts';
import { useBench } from '../../state/useBench.ts';
import { outOfDrawing, type SideOutlet, sideOutlets } from './outlets.ts';
import type { StraightScale } from './scale.ts';

interface StraightHoseProps {
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly sleeved: boolean;
  readonly findings: readonly NumberedFinding[];
}

const THICKEST_PX = 30;
const THINNEST_PX = 12;

/** The hose laid straight: collars, ends, clamps, the line along it that keeps the clock, and the findings' flags. */
export function StraightHose({ lay, scale, middlePx, sleeved, findings }: StraightHoseProps) {
  const { x, pxPerMm } = scale;
  const thick = Math.min(THICKEST_PX, Math.max(THINNEST_PX, lay.outsideDiameterMm * pxPerMm));
  const outlets = sideOutlets(lay);
  const end = (tag: 'A' | 'B', outlet: SideOutlet) => (
    <StraightEnd tag={tag} outlet={outlet} lay={lay} scale={scale} middlePx={middlePx} thickPx={thick} />
  );
  return (
    <g>
      {end('A', outlets.a)}
      {end('B', outlets.b)}
      <rect
        className={sleeved ? 'hose-body hose-sleeved' : 'hose-body'}
        x={x(0)}
        y={middlePx - thick / 2}
        width={Math.max(0, x(lay.cutLengthMm) - x(0))}
        height={thick}
      />
      <rect
        className={sleeved ? 'hose-ribs' : 'hose-weave'}
        x={x(0)}
        y={middlePx - thick / 2}
        width={Math.max(0, x(lay.cutLengthMm) - x(0))}
        height={thick}
      />
      <line
        className="lay-line"
        x1={x(0)}
        x2={x(lay.cutLengthMm)}
        y1={middlePx + thick * 0.28}
        y2={middlePx + thick * 0.28}
      />
      <Collar scale={scale} from={0} to={outlets.a.collarMm} middlePx={middlePx} thickPx={thick} />
      <Collar
        scale={scale}
        from={lay.cutLengthMm - outlets.b.collarMm}
        to={lay.cutLengthMm}
        middlePx={middlePx}
        thickPx={thick}
      />
      {lay.supports
        .filter((support) => support.kind !== 'waypoint')
        .map((support) => (
          <g key={support.id} className={support.proposed ? 'clamp clamp-proposed' : 'clamp'}>
            <rect x={x(support.at.arcLengthMm) - 4} y={middlePx - thick / 2 - 5} width={8} height={thick + 10} rx={2} />
          </g>
        ))}
      {findings.map((numbered) => (
        <HoseFlag
          key={numbered.number}
          numbered={numbered}
          scale={scale}
          topPx={middlePx - thick / 2}
          lengthMm={lay.cutLengthMm}
        />
      ))}
    </g>
  );
}

interface CollarProps {
  readonly scale: StraightScale;
  readonly from: number;
  readonly to: number;
  readonly middlePx: number;
  readonly thickPx: number;
}

function Collar({ scale, from, to, middlePx, thickPx }: CollarProps) {
  const half = thickPx * 0.65;
  return (
    <rect
      className="collar"
      x={scale.x(from)}
      y={middlePx - half}
      width={Math.max(1, (to - from) * scale.pxPerMm)}
      height={half * 2}
      rx={2}
    />
  );
}

interface StraightEndProps {
  readonly tag: 'A' | 'B';
  readonly outlet: SideOutlet;
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly thickPx: number;
}

function StraightEnd({ tag, outlet, lay, scale, middlePx, thickPx }: StraightEndProps) {
  const outward = tag === 'A' ? -1 : 1;
  const shoulder = scale.x(tag === 'A' ? 0 : lay.cutLengthMm);
  const bend = shoulder + outward * outlet.bendBeyondMm * scale.pxPerMm;
  const seat = shoulder + outward * outlet.seatBeyondMm * scale.pxPerMm;
  const down = middlePx + outlet.seatDownMm * scale.pxPerMm;
  const depth = outOfDrawing(outlet);
  const dropPx = Math.hypot(outlet.seatDownMm, outlet.seatTowardMm) * scale.pxPerMm;
  const tube = `M${shoulder} ${middlePx} L${bend} ${middlePx} L${seat} ${down}`;
  const labelY = middlePx - thickPx / 2 - 12;
  return (
    <g className="straight-end">
      <path className="end-outline" style={{ strokeWidth: thickPx * 0.5 + 2.4 }} d={tube} />
      <path className="end-tube" style={{ strokeWidth: thickPx * 0.5 }} d={tube} />
      {depth !== null && <DepthMark x={seat} y={down} depth={depth} radius={Math.max(7, thickPx * 0.36)} />}
      {depth !== null && (
        <text className="depth-words" x={seat} y={Math.max(down, middlePx) + thickPx * 0.5 + 16} textAnchor="middle">
          {depth === 'toward' ? 'toward you' : 'away from you'}
        </text>
      )}
      {tag === 'A' && dropPx > 4 && (
        <text className="depth-words" x={seat} y={down + thickPx * 0.3 + 15} textAnchor="middle">
          6 o’clock
        </text>
      )}
      <text
        className="end-tag"
        x={tag === 'A' ? Math.min(seat, bend) - 6 : Math.max(seat, bend) + 6}
        y={labelY}
        textAnchor={tag === 'A' ? 'start' : 'end'}
      >
        END {tag}
      </text>
    </g>
  );
}

/** Arrow point towards the reader, or its feathers going away. */
function DepthMark({ x, y, depth, radius }: { x: number; y: number; depth: 'toward' | 'away'; radius: number }) {
  const d = radius * 0.6;
  return (
    <g className="depth-mark">
      <circle cx={x} cy={y} r={radius} />
      {depth === 'toward' ? (
        <circle className="depth-dot" cx={x} cy={y} r={radius * 0.32} />
      ) : (
        <path d={`M${x - d} ${y - d} L${x + d} ${y + d} M${x + d} ${y - d} L${x - d} ${y + d}`} />
      )}
    </g>
  );
}

interface HoseFlagProps {
  readonly numbered: NumberedFinding;
  readonly scale: StraightScale;
  readonly topPx: number;
  readonly lengthMm: number;
}

const FLAG_PX = 30;

/** A finding's flag on the straight hose; near END B it hangs backwards, off the tag. */
function HoseFlag({ numbered, scale, topPx, lengthMm }: HoseFlagProps) {
  const bench = useBench();
  const { number, finding } = numbered;
  if (finding.at === undefined) return null;
  const x = scale.x(finding.at.arcLengthMm);
  const back = x + FLAG_PX + 24 > scale.x(lengthMm);
  return (
    <g className={`hose-flag flag-${finding.severity}`} onPointerDown={() => bench.goToFinding(numbered)}>
      <path className="flag-pin" d={`M${x} ${topPx} V${topPx - 34}`} />
      <path
        className="flag-tape"
        d={back ? `M${x} ${topPx - 34} h-30 l5 8 l-5 8 h30 z` : `M${x} ${topPx - 34} h30 l-5 8 l5 8 h-30 z`}
      />
      <text x={back ? x - 6 : x + 6} y={topPx - 22} textAnchor={back ? 'end' : 'start'}>
        {number}
      </text>
    </g>
  );
}
