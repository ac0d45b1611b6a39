import { useId } from 'react';

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
  /** it is only there to say why it cannot be taken */
  readonly disabled?: boolean;
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly ChoiceOption[];
  /** those that come last, under a heading of their own */
  readonly apart?: { readonly heading: string; readonly options: readonly ChoiceOption[] };
  readonly onChoose: (value: string) => void;
}

/** One of several, with its label above it. A value that is not among the options is shown as it is, never swapped. */
export function Choice({ label, value, options, apart, onChoose }: ChoiceProps) {
  const id = useId();
  const last = apart?.options ?? [];
  const known = [...options, ...last].some((option) => option.value === value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
        {!known && <option value={value}>{value} (not in the lists)</option>}
        <Options options={options} />
        {last.length > 0 && (
          <optgroup label={apart?.heading}>
            <Options options={last} />
          </optgroup>
        )}
      </select>
    </div>
  );
}

function Options({ options }: { options: readonly ChoiceOption[] }) {
  return options.map(({ value, label, disabled = false }) => (
    <option key={value} value={value} disabled={disabled}>
      {label}
    </option>
  ));
}
