import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import type { NumberedFinding } from '../../state/findingOrder.ts';
import { type ShownSupport, shownSupports } from '../../state/shownSupports.ts';
import { supportArc } from '../../state/supportPlaces.ts';
import { useBench } from '../../state/useBench.ts';
import { type ClockMark, clockMarks } from './clockMarks.ts';
import type { Along, Dress } from './dress.ts';
import { FLAG, type FlagPlace, flagPlaces } from './flagPlaces.ts';
import { LockedBand } from './LockedBand.tsx';
import { outOfDrawing, type SideOutlet, sideOutlets } from './outlets.ts';
import { SupportMark } from './SupportMark.tsx';
import type { StraightScale } from './scale.ts';

interface StraightHoseProps {
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly dress: Dress;
  readonly run: Run | undefined;
  /** a support is slid along the hose, px from where it was taken */
  readonly onSlide: (support: ShownSupport, byPx: number) => void;
  readonly findings: readonly NumberedFinding[];
}

const THICKEST_PX = 30;
const THINNEST_PX = 12;

/** The hose laid straight: ends, hose, collars, sleeve, the clock's marks, what holds it, and the findings' flags. */
export function StraightHose({ lay, scale, middlePx, dress, run, findings, onSlide }: StraightHoseProps) {
  const { x, pxPerMm } = scale;
  const thick = Math.min(THICKEST_PX, Math.max(THINNEST_PX, lay.outsideDiameterMm * pxPerMm));
  /** Across, a hose too slim to be seen is drawn thicker, and all that is on it as much. */
  const across = (diameterMm: number): number => (diameterMm * thick) / lay.outsideDiameterMm;
  const hosePx = across(dress.hoseDiameterMm);
  const outlets = sideOutlets(lay);
  const end = (tag: 'A' | 'B', outlet: SideOutlet) => (
    <StraightEnd tag={tag} outlet={outlet} lay={lay} scale={scale} middlePx={middlePx} thickPx={thick} />
  );
  const band = { scale, middlePx };
  const { a, b } = dress.collars;
  return (
    <g>
      {end('A', outlets.a)}
      {end('B', outlets.b)}
      <Cover {...band} fromMm={0} toMm={lay.cutLengthMm} tallPx={hosePx} />
      <line
        className="lay-line"
        x1={x(0)}
        x2={x(lay.cutLengthMm)}
        y1={middlePx + hosePx * 0.28}
        y2={middlePx + hosePx * 0.28}
      />
      <Collar {...band} {...a} tallPx={across(a.diameterMm)} />
      <Collar {...band} {...b} tallPx={across(b.diameterMm)} />
      {dress.sleeve !== undefined && <Sleeve {...band} dress={dress} sleeve={dress.sleeve} across={across} />}
      {clockMarks(lay).map((mark) => (
        <ClockLine
          key={mark.end}
          {...band}
          mark={mark}
          dress={dress}
          tallPx={dress.sleeve === undefined ? hosePx : thick}
        />
      ))}
      {run?.locks?.map((lock) => (
        <LockedBand key={lock.id} lock={lock} lay={lay} scale={scale} middlePx={middlePx} thickPx={thick} />
      ))}
      {run !== undefined &&
        shownSupports(run, lay, null).map((support) => (
          <SupportMark
            key={support.id}
            support={support}
            x={x(supportArc(lay, support))}
            widthPx={(dress.clampWidthsMm.get(support.id) ?? 0) * pxPerMm}
            middlePx={middlePx}
            thickPx={thick}
            onSlide={(byPx) => onSlide(support, byPx)}
          />
        ))}
      {hungFlags(findings, lay, scale).map(({ numbered, xPx, place }) => (
        <HoseFlag key={numbered.number} numbered={numbered} xPx={xPx} place={place} topPx={middlePx - thick / 2} />
      ))}
    </g>
  );
}

interface BandProps extends Along {
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly tallPx: number;
}

/** The hose's own cover, hatched. */
function Cover({ scale, middlePx, fromMm, toMm, tallPx }: BandProps) {
  const at = {
    x: scale.x(fromMm),
    y: middlePx - tallPx / 2,
    width: Math.max(0, scale.x(toMm) - scale.x(fromMm)),
    height: tallPx,
  };
  return (
    <>
      <rect className="hose-body" {...at} />
      <rect className="hose-weave" {...at} />
    </>
  );
}

function Collar({ scale, middlePx, fromMm, toMm, tallPx }: BandProps) {
  return (
    <rect
      className="collar"
      x={scale.x(fromMm)}
      y={middlePx - tallPx / 2}
      width={Math.max(1, (toMm - fromMm) * scale.pxPerMm)}
      height={tallPx}
      rx={2}
    />
  );
}

interface SleeveProps {
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly dress: Dress;
  readonly sleeve: NonNullable<Dress['sleeve']>;
  readonly across: (diameterMm: number) => number;
}

/** The sleeve over hose and collars, as wide over these as its wall needs, the collars showing through as dashed lines. */
function Sleeve({ scale, middlePx, dress, sleeve, across }: SleeveProps) {
  const wallsMm = Math.max(0, sleeve.diameterMm - dress.hoseDiameterMm);
  const half = across(sleeve.diameterMm) / 2;
  const over = (collar: { diameterMm: number }): number => Math.max(half, across(collar.diameterMm + wallsMm) / 2);
  const { a, b } = dress.collars;
  const [start, stop] = [scale.x(sleeve.fromMm), scale.x(sleeve.toMm)];
  const [mouthA, mouthB] = [scale.x(a.toMm), scale.x(b.fromMm)];
  const slope = Math.min(8, Math.max(0, (mouthB - mouthA) / 4));
  const side = (s: 1 | -1): string[] => [
    `${start} ${middlePx + s * over(a)}`,
    `${mouthA} ${middlePx + s * over(a)}`,
    `${mouthA + slope} ${middlePx + s * half}`,
    `${mouthB - slope} ${middlePx + s * half}`,
    `${mouthB} ${middlePx + s * over(b)}`,
    `${stop} ${middlePx + s * over(b)}`,
  ];
  const outline = `M${side(-1).join(' L')} L${side(1).reverse().join(' L')} Z`;
  return (
    <g>
      <path className="hose-body hose-sleeved" d={outline} />
      <path className="hose-ribs" d={outline} />
      {[a, b].map((collar) => (
        <rect
          key={collar.fromMm}
          className="collar-under"
          x={scale.x(collar.fromMm)}
          y={middlePx - across(collar.diameterMm) / 2}
          width={Math.max(1, (collar.toMm - collar.fromMm) * scale.pxPerMm)}
          height={across(collar.diameterMm)}
          rx={2}
        />
      ))}
    </g>
  );
}

/** px of a clock's mark along the hose. */
const MARK_PX = 16;

interface ClockLineProps {
  readonly mark: ClockMark;
  readonly dress: Dress;
  readonly scale: StraightScale;
  readonly middlePx: number;
  readonly tallPx: number;
}

/** A clock's mark beside its collar, at the height where it stands round the hose; dashed where it is on the far side. */
function ClockLine({ mark, dress, scale, middlePx, tallPx }: ClockLineProps) {
  const { a, b } = dress.collars;
  const from = mark.end === 'A' ? scale.x(a.toMm) + 10 : scale.x(b.fromMm) - 10 - MARK_PX;
  const y = middlePx + mark.down * (tallPx / 2 - 2);
  const line = { x1: from, x2: from + MARK_PX, y1: y, y2: y };
  return (
    <g className={mark.hidden ? 'clock-mark clock-mark-hidden' : 'clock-mark'}>
      <line className="clock-mark-edge" {...line} />
      <line className="clock-mark-paint" {...line} />
    </g>
  );
}

/** px. An end's tag stands beyond the hose, where no flag hangs. */
const TAG_PX = 38;

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
        x={tag === 'A' ? Math.min(seat, bend, shoulder - TAG_PX) - 6 : Math.max(seat, bend, shoulder + TAG_PX) + 6}
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

interface HungFlag {
  readonly numbered: NumberedFinding;
  readonly xPx: number;
  readonly place: FlagPlace;
}

/** The findings that have a place on the hose, hung so that as few as can be are hidden; the worst is drawn last, over the others. */
function hungFlags(findings: readonly NumberedFinding[], lay: Lay, { x }: StraightScale): readonly HungFlag[] {
  const placed = findings.flatMap((numbered) =>
    numbered.finding.at === undefined ? [] : [{ numbered, xPx: x(numbered.finding.at.arcLengthMm) }],
  );
  const places = flagPlaces(
    placed.map(({ xPx }) => xPx),
    { a: x(0), b: x(lay.cutLengthMm) },
  );
  return placed.map((flag, i) => ({ ...flag, place: places[i] ?? ({ back: false, row: 0 } as const) })).reverse();
}

interface HoseFlagProps extends HungFlag {
  readonly topPx: number;
}

/** px from the hose to the top of a flag on the upper row, and from row to row. */
const PIN_PX = 34;
const FLAG_ROW_PX = 17;

/** A finding's flag on the straight hose. */
function HoseFlag({ numbered, xPx: x, place: { back, row }, topPx }: HoseFlagProps) {
  const bench = useBench();
  const { number, finding } = numbered;
  const top = topPx - PIN_PX + row * FLAG_ROW_PX;
  return (
    <g className={`hose-flag flag-${finding.severity}`} onPointerDown={() => bench.goToFinding(numbered)}>
      <path className="flag-pin" d={`M${x} ${topPx} V${top}`} />
      <path
        className="flag-tape"
        d={
          back
            ? `M${x} ${top} h-${FLAG.widePx} l5 8 l-5 8 h${FLAG.widePx} z`
            : `M${x} ${top} h${FLAG.widePx} l-5 8 l5 8 h-${FLAG.widePx} z`
        }
      />
      <text x={back ? x - 6 : x + 6} y={top + 12} textAnchor={back ? 'end' : 'start'}>
        {number}
      </text>
    </g>
  );
}
