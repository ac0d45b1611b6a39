import type { HeatBand, HeatState } from '../../../shared/document/lay/heat.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { formatMm, formatNumber, formatTemperatureBand } from '../../../shared/sheets/format/index.ts';
import { Value } from './Value.tsx';

/** How hot the hose gets where it is hottest, running and in hot soak: an estimate, with what was taken for it. */
export function RunHeat({ lay }: { lay: Lay }) {
  const { heat } = lay;
  if (heat === undefined) return null;
  const sources = heat.sources
    .slice(0, 2)
    .map(({ from, share }) => `${from.part ?? from.id} ${formatNumber(share * 100, 0)} %`);
  return (
    <section aria-label="Heat">
      <h3>Heat, estimated</h3>
      <dl className="values">
        <HottestValue name="Running" state={heat.running} />
        <HottestValue name="Hot soak" state={heat.soak} />
        <Value name="Heated by" note="of what hot parts send to its hottest place">
          {sources.length === 0 ? 'nothing hot in sight' : sources.join(', ')}
        </Value>
      </dl>
      <p className="teach">{heat.basis.map((line) => `Taken: ${line}.`).join(' ')}</p>
    </section>
  );
}

/** A state's hottest place: the liner, and what lies over it. */
function HottestValue({ name, state }: { name: string; state: HeatState }) {
  const { at, liner, cover, sleeve } = state.hottest;
  const layer = (what: string, band: HeatBand): string => `${what} ${formatTemperatureBand(band)}`;
  const over = [layer('cover', cover), ...(sleeve === undefined ? [] : [layer('sleeve', sleeve)])];
  return (
    <Value name={name} note={`${over.join('; ')}; ${formatMm(at.arcLengthMm)} from shoulder A`}>
      <span className="figure">liner {formatTemperatureBand(liner)}</span>
    </Value>
  );
}
