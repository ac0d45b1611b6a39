import { useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import { formatMm } from '../../../shared/sheets/format/index.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { stretchBetween } from '../../state/edits/lockEdits.ts';
import { orderFindings } from '../../state/findingOrder.ts';
import { handLay } from '../../state/handLay.ts';
import { layOf } from '../../state/runState.ts';
import type { ShownSupport } from '../../state/shownSupports.ts';
import { supportArc } from '../../state/supportPlaces.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { ClockDial, DIAL_SIZE } from '../../widgets/ClockDial.tsx';
import { useWidth } from '../../widgets/useWidth.ts';
import { clockView, type EndLetter } from '../runs/clockView.ts';
import { thingName } from '../runs/Nearest.tsx';
import { useLengthText } from '../useLengthText.ts';
import { BareRule } from './BareRule.tsx';
import { dressOf } from './dress.ts';
import { HeatTrack } from './HeatTrack.tsx';
import { MarkedStretch } from './MarkedStretch.tsx';
import { marksInWords } from './marksInWords.ts';
import { farthestDropMm, sideOutlets } from './outlets.ts';
import { PlaceCursor } from './PlaceCursor.tsx';
import { Rule } from './Rule.tsx';
import { StraightHose } from './StraightHose.tsx';
import { type StraightScale, straightScale } from './scale.ts';
import { BendTrack, ClearanceTrack, HeightTrack } from './Tracks.tsx';

/** px from the top: the hose's middle, the rule, and the tracks under it. */
const ROWS = {
  hoseMiddle: 64,
  rule: { topPx: 112, heightPx: 44 },
  bend: { topPx: 162, heightPx: 42 },
  clearance: { topPx: 212, heightPx: 50 },
  height: { topPx: 268, heightPx: 34 },
  bottom: 312,
};
/** Where the heat is known too: a track more, and all a little lower, so that the bay keeps its room. */
const ROWS_WITH_HEAT = {
  ...ROWS,
  bend: { topPx: 160, heightPx: 34 },
  clearance: { topPx: 202, heightPx: 46 },
  heat: { topPx: 254, heightPx: 34 },
  height: { topPx: 294, heightPx: 32 },
  bottom: 334,
};
/** px between the hose's middle and the rule: an outlet pointing down has to end there. */
const DROP_ROOM_PX = 38;
const GUTTERS = { leftPx: 172, rightPx: 48 };
/** With a clock, its face seen from END B stands beyond that end. */
const GUTTERS_WITH_CLOCK = { leftPx: 172, rightPx: 128 };
/** px of a clock's face; under the hose's name beside END A, and beyond END B, its depth's words between. */
const DIAL = { sizePx: 92, leftPx: 66, topPx: 44, beyondPx: 36, topRightPx: 16 };

/** The chosen hose as it lies on the bench, with everything that is known along it. */
export function StraightView() {
  const open = useDocument((state) => state.open);
  const chosen = useSession((session) => session.run);
  const lay = open === null || chosen === null ? undefined : layOf(open, chosen);
  return (
    <section className="straight" aria-label="Straight view">
      {open !== null && lay !== undefined && lay.centreline.points.length > 1 ? (
        <StraightDrawing open={open} lay={lay} />
      ) : (
        <div className={open?.report ? 'straight-bare' : 'straight-bare straight-unlaid'}>
          <p>
            {lay === undefined
              ? 'Lay a run, and its hose is put down here straight, with its marks and everything it passes.'
              : `No hose to show: ${lay.reason ?? 'no way was found.'}`}
          </p>
          <BareRule />
        </div>
      )}
    </section>
  );
}

function StraightDrawing({ open, lay: laid }: { open: OpenDocument; lay: Lay }) {
  const [box, setBox] = useState<HTMLDivElement | null>(null);
  const widthPx = useWidth(box);
  const { hover, hand, byHand } = useBench();
  const stretch = useStore(hand, (state) => state.stretch);
  const putting = useStore(hand, (state) => state.tool.kind === 'put');
  const lengthText = useLengthText();
  const shape = useStore(hand, (state) => state.shape);
  const lay = useMemo(() => handLay(laid, shape), [laid, shape]);
  const rows = laid.heat === undefined ? ROWS : ROWS_WITH_HEAT;
  const project = open.history.present;
  const run = project.runs.find((r) => r.id === lay.run);
  const scale = useMemo(() => fitted(lay, widthPx), [lay, widthPx]);
  const laidScale = useMemo(() => fitted(laid, widthPx), [laid, widthPx]);
  const mouthsMm = useMemo(() => ({ a: sideOutlets(lay).a.collarMm, b: sideOutlets(lay).b.collarMm }), [lay]);
  const dress = useMemo(() => dressOf(lay, run, open.tables, mouthsMm), [lay, run, open.tables, mouthsMm]);
  const nameOf = useCallback(
    (to: Clearance['to']): string => (to.part !== undefined ? to.part : thingName(project, to)),
    [project],
  );
  const findings = useMemo(() => orderFindings(open.report?.findings ?? []), [open.report]);
  const mark = (arcLengthMm: number): void =>
    hover.setState({ place: { run: lay.run, arcLengthMm, from: 'straight-view' } });
  const byKey = (event: React.KeyboardEvent): void => {
    const at = hover.getState().place?.arcLengthMm ?? 0;
    const step = event.shiftKey ? 10 : 1;
    const to = { ArrowRight: at + step, ArrowLeft: at - step, Home: 0, End: lay.cutLengthMm }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    mark(Math.min(lay.cutLengthMm, Math.max(0, to)));
  };
  const placeUnder = (event: React.PointerEvent): { arcLengthMm: number; onRule: boolean } => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    const y = event.clientY - top - ROWS.rule.topPx;
    return { arcLengthMm: scale.arcAt(event.clientX - left), onRule: y >= 0 && y <= ROWS.rule.heightPx };
  };
  /** Counted on the hose as it was laid: the drawing's own scale changes while a support slides. */
  const slide = (support: ShownSupport, byPx: number): void => {
    const placed = run?.supports.find(({ id }) => id === support.id);
    if (placed !== undefined) byHand.dragAlong(placed.id, supportArc(laid, placed) + byPx / laidScale.pxPerMm);
  };
  const [markFrom, setMarkFrom] = useState<number | null>(null);
  const press = (event: React.PointerEvent): void => {
    const { arcLengthMm, onRule } = placeUnder(event);
    const { tool } = hand.getState();
    if (event.button !== 0) return;
    if (tool.kind === 'put') byHand.putAt(tool.support, arcLengthMm);
    else if (onRule) {
      event.currentTarget.setPointerCapture(event.pointerId);
      setMarkFrom(arcLengthMm);
    }
  };
  const move = (event: React.PointerEvent): void => {
    const { arcLengthMm } = placeUnder(event);
    mark(arcLengthMm);
    if (markFrom !== null) hand.set({ stretch: stretchBetween(lay, markFrom, arcLengthMm) });
  };
  return (
    <>
      <div
        ref={setBox}
        className={putting ? 'straight-box straight-putting' : 'straight-box'}
        role="slider"
        tabIndex={0}
        aria-label={`Place along ${run?.name ?? lay.run}, from shoulder A`}
        aria-valuemin={0}
        aria-valuemax={Math.round(lay.cutLengthMm)}
        aria-valuenow={0}
        aria-valuetext={`hose of ${formatMm(lay.cutLengthMm, 'up')}`}
        onKeyDown={byKey}
        onPointerDown={press}
        onPointerMove={move}
        onPointerUp={() => setMarkFrom(null)}
        onPointerCancel={() => setMarkFrom(null)}
        onPointerLeave={() => hover.setState({ place: null })}
      >
        {widthPx > 0 && (
          <svg width={widthPx} height={rows.bottom} aria-hidden="true">
            <StraightDefinitions />
            <text className="straight-name" x={16} y={24}>
              {shortened(run?.name ?? lay.run)}
            </text>
            <text className="track-words" x={16} y={42}>
              Ø {lengthText(lay.outsideDiameterMm, 'nearest')}
              {run?.sleeve !== undefined && ' with sleeve'}
            </text>
            <Rule lengthMm={lay.cutLengthMm} scale={scale} {...ROWS.rule} />
            {stretch !== null && <MarkedStretch stretch={stretch} scale={scale} rule={ROWS.rule} />}
            {lay.clock.kind === 'angle' && (
              <>
                <EndDial from="A" clockDeg={lay.clock.deg} xPx={DIAL.leftPx} yPx={DIAL.topPx} />
                <EndDial
                  from="B"
                  clockDeg={lay.clock.deg}
                  xPx={scale.x(lay.cutLengthMm + lay.cutOffMm.b) + DIAL.beyondPx}
                  yPx={DIAL.topRightPx}
                />
              </>
            )}
            <StraightHose
              lay={lay}
              scale={scale}
              middlePx={ROWS.hoseMiddle}
              dress={dress}
              run={run}
              onSlide={slide}
              findings={shape === null ? findings.filter(({ finding }) => finding.run === lay.run) : []}
            />
            <BendTrack lay={lay} scale={scale} box={rows.bend} />
            <ClearanceTrack lay={lay} scale={scale} box={rows.clearance} nameOf={nameOf} />
            <HeightTrack lay={lay} scale={scale} box={rows.height} />
            {lay.heat !== undefined && <HeatTrack heat={lay.heat} lay={lay} scale={scale} box={ROWS_WITH_HEAT.heat} />}
            <PlaceCursor
              lay={lay}
              scale={scale}
              topPx={6}
              bottomPx={rows.bottom - 6}
              wordsPx={ROWS.rule.topPx - 8}
              nameOf={nameOf}
            />
          </svg>
        )}
      </div>
      <ul className="unseen" aria-label="Marks along the straight hose">
        {marksInWords(lay, run, dress, (mm) => lengthText(mm, 'nearest')).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </>
  );
}

function fitted(lay: Lay, widthPx: number): StraightScale {
  const gutters = lay.clock.kind === 'angle' ? GUTTERS_WITH_CLOCK : GUTTERS;
  return straightScale(lay, widthPx, gutters, DROP_ROOM_PX / Math.max(1, farthestDropMm(lay)));
}

/** The clock seen from an end, beside it. */
function EndDial({ from, clockDeg, xPx, yPx }: { from: EndLetter; clockDeg: number; xPx: number; yPx: number }) {
  return (
    <g className="end-dial" transform={`translate(${xPx} ${yPx}) scale(${DIAL.sizePx / DIAL_SIZE})`}>
      <ClockDial hands={clockView(from, clockDeg).hands} />
    </g>
  );
}

const LONGEST_NAME = 22;

function shortened(name: string): string {
  return name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1)}…`;
}

/** The hatch of the hose's cover and of a sleeve. */
function StraightDefinitions() {
  return (
    <defs>
      <pattern id="weave" width="8" height="8" patternUnits="userSpaceOnUse">
        <path className="weave-line" d="M0 0 8 8M8 0 0 8" />
      </pattern>
      <pattern id="ribs" width="5" height="8" patternUnits="userSpaceOnUse">
        <path className="rib-line" d="M1 0v8" />
      </pattern>
      <pattern id="wrap" width="11" height="11" patternUnits="userSpaceOnUse" patternTransform="rotate(24)">
        <path className="wrap-turn" d="M0 0h5.5v11h-5.5z" />
      </pattern>
    </defs>
  );
}
