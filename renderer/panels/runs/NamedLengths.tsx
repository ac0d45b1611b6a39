import { useState } from 'react';
import { type FigureShape, LENGTH_FIGURE, lengthFigure } from '../../../shared/document/lay/lengthFigure.ts';
import { type MeasuredLength, sameMeasure } from '../../../shared/document/lay/sameMeasure.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { End } from '../../../shared/document/parts/schema.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { useDocument } from '../../state/useBench.ts';
import { Length } from '../Length.tsx';

/** The hose's length by every name that fits its ends, each with a drawing of where it is measured. */
export function NamedLengths({ lay }: { lay: Lay }) {
  const run = useDocument((state) => state.open?.history.present.runs.find(({ id }) => id === lay.run));
  const ends = useDocument((state) => state.open?.tables.ends);
  const [open, setOpen] = useState(false);
  if (lay.lengths === undefined) return null;
  const end = (side: 'a' | 'b'): End | undefined => ends?.find(({ id }) => id === run?.[side].end);
  const [a, b] = [end('a'), end('b')];
  return (
    <details className="named-lengths" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Lengths by name</summary>
      {open && (
        <ul className="length-list">
          {sameMeasure(lay.lengths).map((length) => (
            <li key={length.convention}>
              {a !== undefined && b !== undefined && <Figure shapes={lengthFigure({ a, b }, length.datum)} />}
              <LengthWords length={length} />
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}

function LengthWords({ length }: { length: MeasuredLength }) {
  const { names, lengthMm, missing, from, to, addedMm, notes, convention } = length;
  return (
    <div>
      <p className="length-name">{names.join(' = ')}</p>
      {lengthMm === undefined ? (
        <p className="reason">Not known: the table of ends lacks {(missing ?? []).join(', and ')}.</p>
      ) : (
        <Length mm={lengthMm} rounding={convention === 'shoulder-to-shoulder' ? 'up' : 'nearest'} both />
      )}
      <p className="value-note">
        From {from} to {to}.
        {addedMm !== undefined &&
          (addedMm.a !== 0 || addedMm.b !== 0) &&
          ` Cut length, ${plus(addedMm.a)} at END A, ${plus(addedMm.b)} at END B.`}
        {(notes ?? []).map((note) => ` ${note}.`)}
      </p>
    </div>
  );
}

function plus(mm: number): string {
  return `${mm < 0 ? 'less' : 'plus'} ${formatNumber(Math.abs(mm), 1)} mm`;
}

/** A drawing of where a length goes from and to; the words beside it say the same. */
function Figure({ shapes }: { shapes: readonly FigureShape[] }) {
  return (
    <svg className="length-figure" viewBox={`0 0 ${LENGTH_FIGURE.width} ${LENGTH_FIGURE.height}`} aria-hidden="true">
      {shapes.map((shape) =>
        shape.kind === 'circle' ? (
          <circle
            key={JSON.stringify(shape)}
            className={`figure-${shape.look}`}
            cx={shape.centre[0]}
            cy={shape.centre[1]}
            r={shape.radius}
          />
        ) : (
          <path
            key={JSON.stringify(shape)}
            className={`figure-${shape.look}`}
            d={`M${shape.points.map((point) => point.join(' ')).join('L')}${shape.closed ? 'Z' : ''}`}
          />
        ),
      )}
    </svg>
  );
}
