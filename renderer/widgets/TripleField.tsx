import { useEffect, useId, useState } from 'react';

export type Triple = readonly [number, number, number];

interface TripleFieldProps {
  readonly label: string;
  /** behind the label; empty for a direction */
  readonly unit: string;
  readonly value: Triple;
  readonly decimals: number;
  /** by which an arrow key changes a number; ten times as much with Shift */
  readonly step: number;
  /** why a triple of numbers will not do, in a sentence */
  readonly refuse?: (value: Triple) => string | undefined;
  readonly onSet: (value: Triple) => void;
}

const AXES = ['x', 'y', 'z'] as const;

/** Three numbers of a place or a direction. Taken over on Enter or on leaving; what will not do is said and not taken. */
export function TripleField({ label, unit, value, decimals, step, refuse, onSet }: TripleFieldProps) {
  const id = useId();
  const shown = value.map((n) => plain(n, decimals));
  const [texts, setTexts] = useState(shown);
  const key = shown.join(' ');
  useEffect(() => setTexts(key.split(' ')), [key]);
  const numbers = texts.map((text) => (text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'))));
  const trouble = numbers.every(Number.isFinite) ? refuse?.(asTriple(numbers)) : 'Expected three numbers.';
  const take = (): void => {
    if (trouble === undefined && texts.join(' ') !== key) onSet(asTriple(merged(numbers, texts, shown, value)));
  };
  const nudge = (at: number, by: number): void => {
    const next = value.map((n, i) => (i === at ? Number((n + by).toFixed(decimals)) : n));
    if (refuse?.(asTriple(next)) === undefined) onSet(asTriple(next));
  };
  return (
    <fieldset className="field triple">
      <legend>
        {label}
        {unit !== '' && `, ${unit}`}
      </legend>
      <div className="triple-row">
        {AXES.map((axis, at) => (
          <label key={axis} htmlFor={`${id}-${axis}`}>
            <span>{axis}</span>
            <input
              id={`${id}-${axis}`}
              inputMode="decimal"
              aria-label={`${label} ${axis}${unit === '' ? '' : `, ${unit}`}`}
              value={texts[at] ?? ''}
              aria-invalid={trouble !== undefined}
              aria-describedby={trouble === undefined ? undefined : `${id}-wrong`}
              onChange={(event) => setTexts(texts.map((text, i) => (i === at ? event.target.value : text)))}
              onBlur={take}
              onKeyDown={(event) => {
                const far = event.shiftKey ? 10 : 1;
                if (event.key === 'Enter') take();
                if (event.key === 'ArrowUp') nudge(at, step * far);
                if (event.key === 'ArrowDown') nudge(at, -step * far);
                if (event.key === 'ArrowUp' || event.key === 'ArrowDown') event.preventDefault();
              }}
            />
          </label>
        ))}
      </div>
      {trouble !== undefined && (
        <p className="field-wrong" id={`${id}-wrong`}>
          {trouble}
        </p>
      )}
    </fieldset>
  );
}

/** A number without the minus of a rounded zero. */
function plain(n: number, decimals: number): string {
  return (Number(n.toFixed(decimals)) + 0).toFixed(decimals);
}

function asTriple(numbers: readonly number[]): Triple {
  return [numbers[0] ?? 0, numbers[1] ?? 0, numbers[2] ?? 0];
}

/** What was not typed in keeps the digits that are not shown. */
function merged(
  numbers: readonly number[],
  texts: readonly string[],
  shown: readonly string[],
  value: Triple,
): readonly number[] {
  return numbers.map((n, i) => (texts[i] === shown[i] ? (value[i] as number) : n));
}
