import type { Stretch } from '../../state/edits/lockEdits.ts';
import type { StraightScale } from './scale.ts';
import type { TrackBox } from './Tracks.tsx';

/** The stretch marked on the rule, to be locked. */
export function MarkedStretch({ stretch, scale, rule }: { stretch: Stretch; scale: StraightScale; rule: TrackBox }) {
  const [from, to] = [scale.x(stretch.fromMm), scale.x(stretch.toMm)];
  return (
    <g className="marked-stretch">
      <rect x={from} y={rule.topPx - 6} width={Math.max(1, to - from)} height={rule.heightPx + 12} />
      <path d={`M${from} ${rule.topPx - 10} v${rule.heightPx + 20} M${to} ${rule.topPx - 10} v${rule.heightPx + 20}`} />
    </g>
  );
}
