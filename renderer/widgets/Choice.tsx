import { useId } from 'react';

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly onChoose: (value: string) => void;
}

/** One of several, with its label above it. A value that is not among the options is shown as it is, never swapped. */
export function Choice({ label, value, options, onChoose }: ChoiceProps) {
  const id = useId();
  const known = options.some((option) => option.value === value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
        {!known && <option value={value}>{value} (not in the lists)</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}
