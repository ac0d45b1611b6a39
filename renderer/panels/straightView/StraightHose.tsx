import { useRef } from 'react';
import { useStore } from 'zustand';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Lock, Run } from '../../../shared/document/project/schema.ts';
import { stretchOf } from '../../state/edits/lockEdits.ts';
import type { NumberedFinding } from '../../state/findingOrder.ts';
import { type ShownSupport, shownSupports } from '../../state/shownSupports.ts';
import { supportArc } from '../../state/supportPlaces.ts';
import { useBench } from '../../state/useBench.ts';
import { outOfDrawing, type SideOutlet, sideOutlets } from './outlets.ts';
import type { StraightScale } from './scale.ts';

interface StraightHoseProps {
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly sleeved: boolean;
  readonly run: Run | undefined;
  /** a support is slid along the hose, px from where it was taken */
  readonly onSlide: (support: ShownSupport, byPx: number) => void;
  readonly findings: readonly NumberedFinding[];
}

const THICKEST_PX = 30;
const THINNEST_PX = 12;

/** The hose laid straight: collars, ends, clamps, the line along it that keeps the clock, and the findings' flags. */
export function StraightHose({ lay, scale, middlePx, sleeved, run, findings, onSlide }: StraightHoseProps) {
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
      {run?.locks?.map((lock) => (
        <LockedBand key={lock.id} lock={lock} lay={lay} scale={scale} middlePx={middlePx} thickPx={thick} />
      ))}
      {run !== undefined &&
        shownSupports(run, lay, null).map((support) => (
          <SupportMark
            key={support.id}
            support={support}
            x={x(supportArc(lay, support))}
            middlePx={middlePx}
            thickPx={thick}
            onSlide={(byPx) => onSlide(support, byPx)}
          />
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

/** px that a click may tremble. */
const TREMBLE_PX = 3;

interface SupportMarkProps {
  /** the pointer has gone so far with the mark in hand */
  readonly onSlide: (byPx: number) => void;
  readonly support: ShownSupport;
  readonly x: number;
  readonly middlePx: number;
  readonly thickPx: number;
}

/** A clamp is a band across the hose, a pass-through a thin plate, a waypoint a loop round it. */
function SupportMark({ support, x, middlePx, thickPx, onSlide }: SupportMarkProps) {
  const { hand, byHand } = useBench();
  const pressedPx = useRef(0);
  const slides = useRef(false);
  const chosen = useStore(hand, (state) => state.support === support.id);
  const look = `clamp${support.proposed ? ' clamp-proposed' : ''}${chosen ? ' clamp-chosen' : ''}`;
  const half = thickPx / 2;
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
      {support.kind === 'clamp' && <rect x={x - 4} y={middlePx - half - 5} width={8} height={thickPx + 10} rx={2} />}
      {support.kind === 'pass-through' && <rect x={x - 1.5} y={middlePx - half - 13} width={3} height={thickPx + 26} />}
      {support.kind === 'waypoint' && <ellipse cx={x} cy={middlePx} rx={4.5} ry={half + 5} />}
    </g>
  );
}

interface LockedBandProps {
  readonly lock: Lock;
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly thickPx: number;
}

/** A locked stretch is wrapped, as it is in the bay. */
function LockedBand({ lock, lay, scale, middlePx, thickPx }: LockedBandProps) {
  const { fromMm, toMm } = stretchOf(lay, lock);
  const x = scale.x(fromMm);
  return (
    <rect
      className="locked-band"
      x={x}
      y={middlePx - thickPx / 2 - 2}
      width={Math.max(1, scale.x(toMm) - x)}
      height={thickPx + 4}
    />
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
