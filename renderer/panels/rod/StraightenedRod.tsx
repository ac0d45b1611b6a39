import type { Straightened } from '../../../shared/document/straightened/schema.ts';
import { formatDegrees, formatTurn } from '../../../shared/sheets/format/index.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';
import { Value } from '../runs/Value.tsx';

/** What a straightened rod says: what to cut, the clock, and how far the points let it be off. */
export function StraightenedRod({ rod }: { rod: Straightened }) {
  const { onRod } = useBench();
  const { clock } = rod;
  return (
    <div className="rod-answer" role="status">
      <dl className="values">
        <Value name="Cut, shoulder to shoulder" note="for the points alone; the saw’s tolerance comes on top">
          <Length mm={rod.cutLengthMm} rounding="up" both /> ± <Length mm={rod.lengthErrorMm} rounding="up" />
        </Value>
        {clock.kind === 'angle' ? (
          <Value
            name="Clock"
            note={`near outlet at 6 o'clock, counter-clockwise to the far outlet; ± ${formatTurn(rod.clockErrorDeg ?? 0)} for the points, tolerance ± ${formatTurn(clock.toleranceDeg)}`}
          >
            <span className="figure">{formatDegrees(clock.deg)}</span>
          </Value>
        ) : (
          <Value name="Clock" note="an end is straight, so there is no angle to set">
            <span className="figure">free</span>
          </Value>
        )}
        <Value name="Tightest bend of the rod" note="centreline; a rod bends where a hose will not">
          <Length mm={rod.tightest.radiusMm} rounding="down" /> at <Length mm={rod.tightest.arcLengthMm} />
        </Value>
        <Value name="Scatter of the points" note="about a smooth rod">
          <Length mm={rod.scatterMm} rounding="up" />
        </Value>
      </dl>
      {rod.notes.map((note) => (
        <p className="reason" key={note}>
          {note}
        </p>
      ))}
      <Button
        onPress={() => void onRod.takeAsBuilt()}
        hint="Takes length and clock as those of a hose made so, to see how it lies"
      >
        See how a hose made so lies
      </Button>
    </div>
  );
}
