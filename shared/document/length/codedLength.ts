import { inchesToMm, mmToInches } from '../../base/units.ts';
import type { CodedLength } from '../project/schema.ts';

/** One way to read a coded length. */
export interface CodedReading {
  readonly kind: CodedLength;
  readonly mm: number;
  /** the words that must stand beside it */
  readonly words: string;
}

const WORDS: Record<CodedLength, string> = {
  eighths: 'in inches and eighths',
  hundredths: 'in hundredths of an inch',
};

/**
 * What four or five digits may mean as the length of a hose: `0244` = 24-4/8 in by the part numbers of MIL-DTL-8788F (last digit
 * eighths), 2.44 in by a catalogue that counts hundredths (`01250` = 12.50 in). Every reading that the digits allow is
 * answered and none is preferred: only the words of who wrote it can tell. Empty = no coded length. Exact.
 */
export function readCodedLength(text: string): readonly CodedReading[] {
  const digits = text.trim();
  if (!/^\d{4,5}$/.test(digits)) return [];
  const eighths = Number(digits.slice(-1));
  const inches = Number(digits.slice(0, -1));
  return [
    ...(eighths < 8 ? [reading(digits, 'eighths', inches + eighths / 8, eighthsText(inches, eighths))] : []),
    reading(digits, 'hundredths', Number(digits) / 100, (Number(digits) / 100).toFixed(2)),
  ];
}

/** Does this read as a code rather than a plain number? Nobody writes 244 mm with a nought before it. */
export function looksCoded(text: string): boolean {
  return /^0\d{3,4}$/.test(text.trim());
}

/**
 * A length in code, never without its words, in mm: to the next eighth or hundredth of an inch upward, for a hose cut long
 * can be trimmed. 0 up to 999-7/8 in or 999.99 in; undefined beyond, where the digits do not reach.
 */
export function codedLength(mm: number, kind: CodedLength): (CodedReading & { readonly code: string }) | undefined {
  const steps = kind === 'eighths' ? 8 : 100;
  const count = Math.ceil(mmToInches(mm) * steps - STEP_NOISE);
  const whole = Math.floor(count / steps);
  if (mm < 0 || whole > 999) return undefined;
  const code = kind === 'eighths' ? `${whole}`.padStart(3, '0') + (count - whole * 8) : `${count}`.padStart(5, '0');
  const written = kind === 'eighths' ? eighthsText(whole, count - whole * 8) : (count / 100).toFixed(2);
  return { code, ...reading(code, kind, count / steps, written) };
}

/** Steps. A length this near one is that one, by whatever sum it was reached. */
const STEP_NOISE = 1e-6;

function eighthsText(inches: number, eighths: number): string {
  return eighths === 0 ? `${inches}` : `${inches}-${eighths}/8`;
}

function reading(code: string, kind: CodedLength, inches: number, written: string): CodedReading {
  return { kind, mm: inchesToMm(inches), words: `${code} ${WORDS[kind]} = ${written} in` };
}
