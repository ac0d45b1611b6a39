import { useEffect, useId, useState } from 'react';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  /** shown while the field is empty; an empty field is taken as it is */
  readonly hint?: string;
  /** whether the field may be left empty */
  readonly mayBeEmpty?: boolean;
  /** whether words that are there are of the right form; absent = all are */
  readonly takes?: (value: string) => boolean;
  readonly wrongWords?: string;
  readonly onSet: (value: string) => void;
}

/** One line of words, taken over on Enter or on leaving the field. */
export function TextField({
  label,
  value,
  hint,
  mayBeEmpty = false,
  takes = () => true,
  wrongWords = 'Expected a name.',
  onSet,
}: TextFieldProps) {
  const id = useId();
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const wrong = text.trim() === '' ? !mayBeEmpty : !takes(text.trim());
  const take = (): void => {
    if (!wrong && text.trim() !== value) onSet(text.trim());
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="text-input"
        value={text}
        placeholder={hint}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => event.key === 'Enter' && take()}
      />
      {wrong && (
        <p className="field-wrong" id={`${id}-wrong`}>
          {wrongWords}
        </p>
      )}
    </div>
  );
}
