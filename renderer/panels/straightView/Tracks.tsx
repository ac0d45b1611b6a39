import { RADIUS_RELATIVE } from '../../../shared/base/tolerances.ts';
import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import type { TrackPoint } from '../../state/layPlaces.ts';
import { useLengthText } from '../useLengthText.ts';
import type { StraightScale } from './scale.ts';
import { bendShares, fallPicture, nearMarks, nearPlaces } from './tracks.ts';

export interface TrackBox {
  readonly topPx: number;
  readonly heightPx: number;
}

export interface TrackProps {
  readonly lay: Lay;
  readonly scale: StraightScale;
  readonly box: TrackBox;
}

/** The frame of a track: its name and one line of words in the gutter, a base line along the hose. */
export function TrackFrame({
  name,
  words,
  scale,
  box,
  children,
}: TrackProps & { name: string; words: string; children: React.ReactNode }) {
  const base = box.topPx + box.heightPx;
  return (
    <g className="track">
      <text className="track-name" x={16} y={box.topPx + 16}>
        {name}
      </text>
      <text className="track-words" x={16} y={box.topPx + 32}>
        {words}
      </text>
      <line className="track-base" x1={scale.leftPx} x2={scale.rightPx} y1={base} y2={base} />
      {children}
    </g>
  );
}

export function line(points: readonly TrackPoint[], scale: StraightScale, y: (value: number) => number): string {
  return points
    .map((p, i) => `${i === 0 ? 'M' : 'L'}${scale.x(p.arcLengthMm).toFixed(1)} ${y(p.value).toFixed(1)}`)
    .join('');
}

export function filled(
  points: readonly TrackPoint[],
  scale: StraightScale,
  y: (value: number) => number,
  base: number,
): string {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return '';
  return `${line(points, scale, y)}L${scale.x(last.arcLengthMm)} ${base}L${scale.x(first.arcLengthMm)} ${base}Z`;
}

/** How hard the hose is bent along its length, against its limit. */
export function BendTrack(props: TrackProps) {
  const lengthText = useLengthText();
  const { lay, scale, box } = props;
  const shares = bendShares(lay);
  const base = box.topPx + box.heightPx;
  const limitY = base - box.heightPx * 0.78;
  const y = (share: number): number => Math.max(box.topPx, base - share * box.heightPx * 0.78);
  const { minRadius } = lay;
  const over = minRadius.provenAtLeastMm < minRadius.limitMm * (1 - RADIUS_RELATIVE);
  return (
    <TrackFrame {...props} name="Bend" words={`limit R ${lengthText(minRadius.limitMm, 'up')}`}>
      <path className="track-area" d={filled(shares, scale, y, base)} />
      <path className="track-line" d={line(shares, scale, y)} />
      <line className="track-limit" x1={scale.x(0)} x2={scale.x(lay.cutLengthMm)} y1={limitY} y2={limitY} />
      <MarkedValue
        x={scale.x(minRadius.at.arcLengthMm)}
        y={y(minRadius.limitMm / minRadius.radiusMm)}
        short={over}
        text={`R ${lengthText(minRadius.provenAtLeastMm, 'down')}`}
        topPx={box.topPx}
      />
    </TrackFrame>
  );
}

interface MarkedValueProps {
  readonly x: number;
  readonly y: number;
  readonly short: boolean;
  readonly text: string;
  /** said after it where it breaks its limit */
  readonly fault?: string;
  /** its words stand before it, not after */
  readonly before?: boolean;
  /** of the track: its words do not rise over it */
  readonly topPx: number;
}

/** px of a letter of a value, on the narrow side: what is behind its words is covered, nothing beside them. */
const MARKED_PX = 6.1;

/** A value at its place on a track, its words legible over the lines of the track. */
export function MarkedValue({ x, y, short, text, fault = 'too tight', before = false, topPx }: MarkedValueProps) {
  const words = short ? `${text}, ${fault}` : text;
  const [wordsX, wordsY] = [before ? x - 9 : x + 9, Math.max(y + 4, topPx + 13)];
  const widePx = words.length * MARKED_PX;
  return (
    <g className={short ? 'marked marked-short' : 'marked'}>
      <rect className="marked-back" x={before ? wordsX - widePx : wordsX} y={wordsY - 11} width={widePx} height={14} />
      <path d={`M${x} ${y - 5} l5 5 l-5 5 l-5 -5 z`} />
      <text x={wordsX} y={wordsY} textAnchor={before ? 'end' : 'start'}>
        {words}
      </text>
    </g>
  );
}

interface ClearanceTrackProps extends TrackProps {
  readonly nameOf: (to: Clearance['to']) => string;
}

const NAME_ROWS = 3;
/** px of a letter of a name, on the wide side: names may stand apart, never overlap. */
const NAME_PX = 7.2;

function thingKey({ to }: Clearance): string {
  return `${to.kind} ${to.id} ${to.part ?? ''}`;
}

function isShort({ provenAtLeastMm, requiredMm }: Clearance): boolean {
  return provenAtLeastMm < requiredMm;
}

/**
 * The clearance to the tightest neighbour along the hose, over what is asked from it there (1 is the dashed line), and the
 * nearest place of each thing as a post.
 */
export function ClearanceTrack({ nameOf, ...props }: ClearanceTrackProps) {
  const lengthText = useLengthText();
  const { lay, scale, box } = props;
  const base = box.topPx + box.heightPx;
  const limitY = base - box.heightPx * 0.5;
  const tightest = nearPlaces(lay);
  const y = (share: number): number => base - share * box.heightPx * 0.5;
  const text = (c: Clearance): string =>
    `${nameOf(c.to)} ${lengthText(c.provenAtLeastMm, 'down', 0)}${isShort(c) ? ', too near' : ''}`;
  const marks = nearMarks(lay, scale.x, (c) => text(c).length * NAME_PX, scale.rightPx, NAME_ROWS);
  return (
    <TrackFrame {...props} name="Clearance" words="asked for: dashed">
      <path className="track-area" d={filled(tightest, scale, y, base)} />
      <path className="track-line" d={line(tightest, scale, y)} />
      <line className="track-limit" x1={scale.x(0)} x2={scale.x(lay.cutLengthMm)} y1={limitY} y2={limitY} />
      {marks.map(({ clearance, share }) => {
        const x = scale.x(clearance.at.arcLengthMm);
        const top = base - share * box.heightPx * 0.5;
        return (
          <g key={thingKey(clearance)} className={isShort(clearance) ? 'post post-short' : 'post'}>
            <line x1={x} x2={x} y1={base} y2={top} />
            <path d={`M${x - 6} ${top} h12`} />
          </g>
        );
      })}
      {marks.map(({ clearance, row, nameFromPx }) =>
        row === undefined ? null : (
          <text
            key={thingKey(clearance)}
            className={isShort(clearance) ? 'post-name post-name-short' : 'post-name'}
            x={nameFromPx}
            y={box.topPx + 11 + row * 15}
          >
            {text(clearance)}
          </text>
        ),
      )}
    </TrackFrame>
  );
}

/** Height along the hose. */
export function HeightTrack(props: TrackProps) {
  const lengthText = useLengthText();
  const { lay, scale, box } = props;
  const base = box.topPx + box.heightPx;
  const { heights, riseMm, words } = fallPicture(lay);
  const y = (value: number): number => base - (riseMm > 0 ? value / riseMm : 0) * (box.heightPx - 6);
  return (
    <TrackFrame {...props} name={`Height ${lengthText(riseMm, 'nearest', 0)}`} words={words}>
      <path className="track-area" d={filled(heights, scale, y, base)} />
      <path className="track-line" d={line(heights, scale, y)} />
    </TrackFrame>
  );
}
