import { formatTurn, isStraight } from '../../../shared/sheets/format/index.ts';
import { Length } from '../Length.tsx';
import { Value } from './Value.tsx';

/** The worst of a figure, and where it is so. */
export interface Worst {
  readonly value: number;
  readonly note: string;
}

interface WorstFiguresProps {
  readonly slackMm: Worst;
  readonly radiusMm: Worst | undefined;
  readonly twistDeg: Worst | undefined;
}

/** Slack, bend and twist of a hose whose ends do not stay where they were when it was laid. */
export function WorstFigures({ slackMm, radiusMm, twistDeg }: WorstFiguresProps) {
  return (
    <>
      <Value name="Slack left" note={slackMm.note}>
        <Length mm={slackMm.value} rounding="down" denominator={32} />
      </Value>
      {radiusMm !== undefined && (
        <Value name="Tightest bend" note={radiusMm.note}>
          {isStraight(radiusMm.value) ? (
            <span className="figure">straight</span>
          ) : (
            <Length mm={radiusMm.value} rounding="down" />
          )}
        </Value>
      )}
      {twistDeg !== undefined && (
        <Value name="Most twist" note={twistDeg.note}>
          <span className="figure">{formatTurn(Math.abs(twistDeg.value), 'up')}</span>
        </Value>
      )}
    </>
  );
}
