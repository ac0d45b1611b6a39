import { type ReactNode, useId } from 'react';

interface SliderProps {
  /** what stands over it, and names it where `name` does not */
  readonly children: ReactNode;
  readonly name?: string;
  /** it goes from 0 */
  readonly most: number;
  readonly step?: number;
  /** where it stands; `null` = it is put away, and only what stands over it is there */
  readonly at: number | null;
  /** where it stands in words, for who hears it */
  readonly words?: string;
  readonly onMove: (to: number) => void;
}

/** A slider through what comes one after the other, with its name and place over it. */
export function Slider({ children, name, most, step = 1, at, words, onMove }: SliderProps) {
  const id = useId();
  return (
    <div className="slider">
      <label htmlFor={id}>{children}</label>
      {at !== null && (
        <input
          id={id}
          type="range"
          aria-label={name}
          min={0}
          max={most}
          step={step}
          value={at}
          aria-valuetext={words}
          onChange={({ target }) => onMove(Number(target.value))}
        />
      )}
    </div>
  );
}
