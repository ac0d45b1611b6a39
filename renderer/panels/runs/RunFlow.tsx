import type { Lay } from '../../../shared/document/lay/schema.ts';
import { formatNumber, formatPressureBand } from '../../../shared/sheets/format/index.ts';
import { Value } from './Value.tsx';

/** What the wanted flow does in the hose as it lies: an estimate, with what was taken for it. */
export function RunFlow({ lay }: { lay: Lay }) {
  const { flow } = lay;
  if (flow === undefined) return null;
  const kpa = (value: number): string => `${formatNumber(value, 1)} kPa`;
  const parts = `likely: hose ${kpa(flow.hoseKpa)}, bends ${kpa(flow.bendsKpa)}, ends ${kpa(flow.endsKpa)}`;
  const smooth = flow.smoothBoreKpa === undefined ? '' : `; a smooth bore would lose ${kpa(flow.smoothBoreKpa)}`;
  return (
    <section aria-label="Flow">
      <h3>Flow, estimated</h3>
      <dl className="values">
        <Value name="Speed in the bore" note={flow.regime === 'either' ? 'laminar or turbulent' : flow.regime}>
          <span className="figure">{formatNumber(flow.speedMPerS, 2, 'up')} m/s</span>
        </Value>
        <Value name="Pressure lost" note={`${parts}${smooth}`}>
          <span className="figure">{formatPressureBand(flow.dropKpa)}</span>
        </Value>
        <Value name={flow.headKpa < 0 ? 'Taken by its rise' : 'Given by its fall'}>
          <span className="figure">{kpa(Math.abs(flow.headKpa))}</span>
        </Value>
      </dl>
      <p className="teach">{flow.basis.map((line) => `Taken: ${line}.`).join(' ')}</p>
    </section>
  );
}
