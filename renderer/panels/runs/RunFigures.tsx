import type { Lay } from '../../../shared/document/lay/schema.ts';
import { formatDegrees, formatNumber, formatSlack, isStraight } from '../../../shared/sheets/format/index.ts';
import type { ShownRunState } from '../../state/runState.ts';
import { Length } from '../Length.tsx';
import { NamedLengths } from './NamedLengths.tsx';
import { Value } from './Value.tsx';

/** Said beside the figure itself, where a saw is set by it. */
const CUT_WARNINGS: Record<ShownRunState, string> = {
  'not-laid': '',
  found: ': of the lay before, wait for the new one',
  stale: ': changed since, lay again first',
  stop: ': do not cut yet',
  look: '',
  clean: '',
};

/** What the bench needs of a laid run: the cut length large, the rest as a table. */
export function RunFigures({ lay, state }: { lay: Lay; state: ShownRunState }) {
  const { minRadius } = lay;
  return (
    <div className="figures">
      <div className={['stop', 'stale', 'found'].includes(state) ? 'cut cut-not-yet' : 'cut'}>
        <p className="cut-label">Cut, shoulder to shoulder{CUT_WARNINGS[state]}</p>
        <p className="cut-figure">
          <Length mm={lay.cutLengthMm} rounding="up" both />
        </p>
      </div>
      <dl className="values">
        <Value
          name="Overall"
          note="cut + C of END A + C of END B, measured along the straight hose to the centre of each seat"
        >
          <Length mm={lay.overallLengthMm} both />
        </Value>
        {lay.sleeve !== undefined && (
          <Value
            name="Sleeve, at least"
            note={`estimate: ${formatNumber(lay.sleeve.turnedDeg, 0)}° of bends; longer if its wall does not stretch`}
          >
            <Length mm={lay.sleeve.cutLengthMm} rounding="up" both />
          </Value>
        )}
        <Value name="Slack" note="live over taut length, less one">
          <span className="figure">{formatSlack(lay.slack)}</span>
        </Value>
        <Value name="Tightest bend" note="centreline radius; the limit is brought to the centreline">
          {isStraight(minRadius.radiusMm) ? (
            <span className="figure">straight</span>
          ) : (
            <Length mm={minRadius.provenAtLeastMm} rounding="down" />
          )}
          <span className="against"> limit </span>
          <Length mm={minRadius.limitMm} rounding="up" />
        </Value>
        <Value name="Straight beyond the mouths" note="">
          A <Length mm={lay.straightTailMm.a} rounding="down" /> · B{' '}
          <Length mm={lay.straightTailMm.b} rounding="down" />
        </Value>
        {(['a', 'b'] as const).map((side) => {
          const adapters = lay.ends[side].adapters ?? [];
          return adapters.length === 0 ? null : (
            <Value key={side} name={`END ${side.toUpperCase()} goes on`} note="adapters, from the part outwards">
              {adapters.map(({ id, clockDeg }) => `${id} at ${formatDegrees(clockDeg)}`).join(', then ')}
            </Value>
          );
        })}
        {(lay.breathing ?? []).map((breath) => (
          <Value
            key={breath.change}
            name={`Nearest under pressure, at ${breath.change > 0 ? '+' : ''}${formatSlack(breath.change)} of its length`}
            note={breath.taut ? '' : `to ${breath.tightest?.to.part ?? breath.tightest?.to.id ?? 'nothing'}`}
          >
            {breath.taut ? (
              <span className="figure">goes taut</span>
            ) : (
              breath.tightest && <Length mm={breath.tightest.provenAtLeastMm} rounding="down" />
            )}
          </Value>
        ))}
      </dl>
      <NamedLengths lay={lay} />
    </div>
  );
}
