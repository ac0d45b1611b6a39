import { useEffect, useId, useState } from 'react';
import { inchesToMm, mmToInches } from '../../shared/base/units.ts';
import { length, type Vec3 } from '../../shared/base/vec3.ts';
import type { CodedReading } from '../../shared/document/length/codedLength.ts';
import { readLength } from '../../shared/document/parts/readLength.ts';
import { formatLengthBoth } from '../../shared/sheets/format/index.ts';
import { useSession } from '../state/useBench.ts';
import { Button } from '../widgets/Button.tsx';
import { TripleField } from '../widgets/TripleField.tsx';

interface LengthFieldProps {
  readonly label: string;
  readonly mm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly onSet: (mm: number) => void;
}

/**
 * A length in the unit chosen for the window; the project keeps mm. Typed as a rule or a shop gives it: 620mm, 24 3/8, 24-3/8", and a
 * number without a unit in the window's own. Digits in code (0244) are asked about, every reading shown with its words.
 */
export function LengthField({ label, mm, lowMm, highMm, onSet }: LengthFieldProps) {
  const unit = useSession((session) => session.units) === 'inch' ? 'in' : 'mm';
  const id = useId();
  const shown = unit === 'mm' ? mm.toFixed(1) : mmToInches(mm).toFixed(3);
  /** null = nothing is typed that is not taken over: the length itself is shown */
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? shown;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a length that changed elsewhere takes the place of what is typed
  useEffect(() => setTyped(null), [shown]);
  const read = readLength(text, unit);
  const inRange = (value: number): boolean => value > lowMm - HALF_SHOWN_MM && value < highMm + HALF_SHOWN_MM;
  const clamped = (value: number): number => Math.min(highMm, Math.max(lowMm, value));
  const wrong = !read.ok || !inRange(read.mm);
  const take = (): void => {
    if (!read.ok || wrong || typed === null) return;
    // Taken over once, whoever asks next: Enter is followed by leaving the field.
    setTyped(null);
    if (text !== shown) onSet(clamped(read.mm));
  };
  const nudge = (by: number): void => onSet(clamped(mm + by * (unit === 'mm' ? 1 : inchesToMm(1 / 16))));
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="number">
        <button type="button" aria-label={`${label}: less`} onClick={() => nudge(-1)}>
          −
        </button>
        <input
          id={id}
          value={text}
          autoComplete="off"
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            if (event.key === 'ArrowUp') nudge(1);
            if (event.key === 'ArrowDown') nudge(-1);
          }}
        />
        <span className="number-unit">{unit}</span>
        <button type="button" aria-label={`${label}: more`} onClick={() => nudge(1)}>
          +
        </button>
      </div>
      {wrong && (
        <p className="field-wrong" id={`${id}-wrong`}>
          {read.ok
            ? `Expected a length from ${formatLengthBoth(lowMm, 'up', 32)} to ${formatLengthBoth(highMm, 'down', 32)}.`
            : `${read.message}.`}
        </p>
      )}
      {!read.ok && (
        <CodedChoices
          readings={(read.readings ?? []).filter((one) => inRange(one.mm))}
          onTake={(one) => onSet(one.mm)}
        />
      )}
    </div>
  );
}

/** mm. Half of the last digit shown: a limit shown rounded may be typed as it is shown. */
const HALF_SHOWN_MM = 0.05;

function CodedChoices({
  readings,
  onTake,
}: {
  readonly readings: readonly CodedReading[];
  readonly onTake: (reading: CodedReading) => void;
}) {
  return (
    <div className="coded-choices">
      {readings.map((reading) => (
        <Button key={reading.kind} onPress={() => onTake(reading)}>
          {reading.words}, {formatLengthBoth(reading.mm, 'nearest', 32)}
        </Button>
      ))}
    </div>
  );
}

interface PointFieldProps {
  readonly label: string;
  readonly point: Vec3;
  readonly onSet: (point: Vec3) => void;
}

/** A place of the bay in the unit chosen for the window. */
export function PointField({ label, point, onSet }: PointFieldProps) {
  const inches = useSession((session) => session.units) === 'inch';
  const map = (v: Vec3, change: (n: number) => number): Vec3 => [change(v[0]), change(v[1]), change(v[2])];
  return inches ? (
    <TripleField
      label={label}
      unit="in"
      value={map(point, mmToInches)}
      decimals={3}
      step={0.0625}
      onSet={(value) => onSet(map(value, inchesToMm))}
    />
  ) : (
    <TripleField label={label} unit="mm" value={point} decimals={1} step={1} onSet={onSet} />
  );
}

interface DirectionFieldProps {
  readonly label: string;
  readonly direction: Vec3;
  /** why a direction will not do, in a sentence, beside being none */
  readonly refuse?: (direction: Vec3) => string | undefined;
  readonly onSet: (direction: Vec3) => void;
}

/** A direction in the bay: only where it points counts. */
export function DirectionField({ label, direction, refuse, onSet }: DirectionFieldProps) {
  return (
    <TripleField
      label={label}
      unit=""
      value={direction}
      decimals={3}
      step={0.05}
      refuse={(value) => (length(value) < 1e-3 ? 'Expected a direction, not 0, 0, 0.' : refuse?.(value))}
      onSet={onSet}
    />
  );
}
