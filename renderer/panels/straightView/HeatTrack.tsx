import type { Heat } from '../../../shared/document/lay/heat.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { heatLines } from './heatLines.ts';
import { filled, line, MarkedValue, TrackFrame, type TrackProps } from './Tracks.tsx';

/** Share of the track's height at which the limit stands. */
const LIMIT_SHARE = 0.78;

/** The liner's estimated temperature along the hose, running as an area and in hot soak as a line, against the hose's limit. */
export function HeatTrack({ heat, ...props }: TrackProps & { heat: Heat }) {
  const { lay, scale, box } = props;
  const { running, soak, hottest } = heatLines(heat);
  const base = box.topPx + box.heightPx;
  const y = (celsius: number): number =>
    Math.max(box.topPx, base - Math.max(0, celsius / heat.linerLimitC) * box.heightPx * LIMIT_SHARE);
  const limitY = y(heat.linerLimitC);
  const when = hottest.soaking ? ' in hot soak' : '';
  return (
    <TrackFrame {...props} name="Heat" words={`liner, limit ${formatNumber(heat.linerLimitC, 0)} °C`}>
      <path className="track-area" d={filled(running, scale, y, base)} />
      <path className="track-line" d={line(running, scale, y)} />
      <path className="track-line track-soak" d={line(soak, scale, y)} />
      <line className="track-limit" x1={scale.x(0)} x2={scale.x(lay.cutLengthMm)} y1={limitY} y2={limitY} />
      <MarkedValue
        x={scale.x(hottest.arcLengthMm)}
        y={y(hottest.value)}
        short={hottest.value > heat.linerLimitC}
        text={`about ${formatNumber(hottest.value, 0)} °C${when}`}
        fault="too hot"
        topPx={box.topPx}
        before={hottest.arcLengthMm > lay.cutLengthMm / 2}
      />
    </TrackFrame>
  );
}
