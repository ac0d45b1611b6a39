import { useEffect, useId, useState } from 'react';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  /** null = not stated yet */
  readonly value: number | null;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly decimals: number;
  readonly onSet: (value: number) => void;
  /** takes the number away when the field is emptied; absent = it has to be stated */
  readonly onClear?: () => void;
  /** what else may be typed than a number, and its number in this field's unit; null = not understood */
  readonly other?: { readonly words: string; readonly read: (text: string) => number | null };
}

/** A number with its unit. Taken over on Enter or on leaving the field; what is no number in range is said and not taken. */
export function NumberField({
  label,
  unit,
  value,
  low,
  high,
  step,
  decimals,
  onSet,
  onClear,
  other,
}: NumberFieldProps) {
  const id = useId();
  const shown = value === null ? '' : value.toFixed(decimals);
  /** null = nothing is typed that is not taken over: the number itself is shown */
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? shown;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a number that changed elsewhere takes the place of what is typed
  useEffect(() => setTyped(null), [shown]);
  const parsed = other === undefined ? Number(text.replace(',', '.')) : (other.read(text) ?? Number.NaN);
  const empty = text.trim() === '';
  // Left empty where nothing is stated yet is no mistake.
  const wrong = empty
    ? value !== null && onClear === undefined
    : !Number.isFinite(parsed) || parsed < low || parsed > high;
  const take = (): void => {
    if (wrong || typed === null) return;
    // Taken over once, whoever asks next: Enter is followed by leaving the field.
    setTyped(null);
    if (text === shown) return;
    if (empty) onClear?.();
    else onSet(parsed);
  };
  const nudge = (by: number): void =>
    onSet(Math.min(high, Math.max(low, Number(((value ?? Math.max(low, 0)) + by).toFixed(decimals)))));
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="number">
        <button type="button" aria-label={`${label}: less`} onClick={() => nudge(-step)}>
          −
        </button>
        <input
          id={id}
          inputMode="decimal"
          value={text}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            if (event.key === 'ArrowUp') nudge(step);
            if (event.key === 'ArrowDown') nudge(-step);
          }}
        />
        <span className="number-unit">{unit}</span>
        <button type="button" aria-label={`${label}: more`} onClick={() => nudge(step)}>
          +
        </button>
      </div>
      {wrong && (
        <p className="field-wrong" id={`${id}-wrong`}>
          Expected a number from {low} to {high}
          {other !== undefined && ` ${unit}, ${other.words}`}.
        </p>
      )}
    </div>
  );
}
