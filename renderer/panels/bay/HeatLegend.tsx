import { formatTemperature } from '../../../shared/sheets/format/index.ts';
import { HEAT_SCALE, type HeatView, heatColourText } from '../../state/heatScale.ts';

const { leastC, mostC } = HEAT_SCALE;
/** deg C between the figures under the strip: few enough to stand side by side under a narrow one. */
const TICK_C = 120;
const STOPS = 12;

function gradient(to: 'top' | 'right', stops: readonly string[]): string {
  return `linear-gradient(to ${to}, ${stops.join(', ')})`;
}

/** What the colours of heat stand for. */
export function HeatLegend({ view, known }: { readonly view: HeatView; readonly known: boolean }) {
  const stops = Array.from({ length: STOPS + 1 }, (_, i) => heatColourText(leastC + ((mostC - leastC) * i) / STOPS));
  const ticks = Array.from({ length: (mostC - leastC) / TICK_C + 1 }, (_, i) => leastC + i * TICK_C);
  return (
    <figure className="legend heat-legend" data-over-bay>
      <figcaption>
        {view === 'running' ? 'Outside of each hose, running' : 'The hottest each place gets, engine just off'}: an
        estimate
      </figcaption>
      <div
        className="heat-strip"
        style={{ '--heat-up': gradient('top', stops), '--heat-flat': gradient('right', stops) } as React.CSSProperties}
      />
      <div className="heat-ticks">
        {ticks.map((celsius) => (
          <span key={celsius}>
            {celsius === mostC ? 'over ' : ''}
            {formatTemperature(celsius)}
          </span>
        ))}
      </div>
      {!known && <p>Lay the runs to see their temperatures; hot skins are in the last colour.</p>}
    </figure>
  );
}
