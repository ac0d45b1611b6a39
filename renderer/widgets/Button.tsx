import type { ReactNode } from 'react';

interface ButtonProps {
  readonly children: ReactNode;
  readonly onPress: () => void;
  /** main: the one thing to do next; plain: anything else; quiet: without a face of its own */
  readonly look?: 'main' | 'plain' | 'quiet';
  readonly disabled?: boolean;
  readonly pressed?: boolean;
  /** said instead of the content, where that is a sign and not words */
  readonly name?: string;
  readonly hint?: string;
}

export function Button({ children, onPress, look = 'plain', disabled = false, pressed, name, hint }: ButtonProps) {
  return (
    <button
      type="button"
      className={`button button-${look}`}
      onClick={onPress}
      disabled={disabled}
      aria-pressed={pressed}
      aria-label={name}
      title={hint ?? name}
    >
      {children}
    </button>
  );
}
