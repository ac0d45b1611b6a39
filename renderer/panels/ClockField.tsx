import { useId, useState } from 'react';
import { type ClockShape, readClock } from '../../shared/document/clock/readClock.ts';
import { dialectSentence, formatDegrees } from '../../shared/sheets/format/index.ts';
import { ClockFace } from '../widgets/ClockFace.tsx';

interface ClockFieldProps {
  readonly label: string;
  /** degrees, in the program's convention; null = not stated yet */
  readonly clockDeg: number | null;
  readonly hint?: string;
  readonly onSet: (clockDeg: number) => void;
}

/**
 * The clock of a hose as somebody wrote it. A note that means one hose is taken over on Enter or on leaving the field; one that
 * may mean two shows both as clock faces, to choose from the hose in hand.
 */
export function ClockField({ label, clockDeg, hint, onSet }: ClockFieldProps) {
  const id = useId();
  const [text, setText] = useState('');
  const read = text.trim() === '' ? null : readClock(text);
  const shapes = read?.ok ? read.shapes : [];
  const take = (shape: ClockShape): void => {
    onSet(shape.clockDeg);
    setText('');
  };
  const takeOne = (): void => {
    if (shapes.length === 1) take(shapes[0] as ClockShape);
  };
  const wrong = read?.ok === false;
  return (
    <div className="field clock-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="text-input"
        value={text}
        placeholder={clockDeg === null ? hint : formatDegrees(clockDeg)}
        aria-invalid={wrong}
        aria-describedby={`${id}-read`}
        onChange={(event) => setText(event.target.value)}
        onBlur={takeOne}
        onKeyDown={(event) => event.key === 'Enter' && takeOne()}
      />
      <div id={`${id}-read`} aria-live="polite">
        {wrong && <p className="field-wrong">{read.message}.</p>}
        {shapes.length === 1 && (
          <p className="value-note">{dialectSentence(shapes[0]?.clockDeg ?? 0, 'near-at-six')}</p>
        )}
        {shapes.length === 2 && <BothShapes shapes={shapes} onTake={take} />}
      </div>
    </div>
  );
}

function BothShapes({ shapes, onTake }: { shapes: readonly ClockShape[]; onTake: (shape: ClockShape) => void }) {
  return (
    <>
      <p className="field-wrong">
        This means one of two hoses. Which is it? Hold yours by either end (N, near) and look along it to the other (F,
        far).
      </p>
      <div className="clock-faces">
        {shapes.map((shape) => (
          <button
            key={shape.clockDeg}
            type="button"
            className="clock-choice"
            aria-label={`This one: ${dialectSentence(shape.clockDeg, 'far-at-twelve')}`}
            onClick={() => onTake(shape)}
          >
            <ClockFace
              caption={`${formatDegrees(shape.clockDeg)}: ${shape.readAs}`}
              words={dialectSentence(shape.clockDeg, 'far-at-twelve')}
              hands={[
                { atDeg: 0, name: 'F', look: 'far' },
                { atDeg: shape.clockDeg, name: 'N', look: 'near' },
              ]}
            />
          </button>
        ))}
      </div>
    </>
  );
}
