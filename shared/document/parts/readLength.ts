import { MM_PER_INCH } from '../../base/units.ts';
import { type CodedReading, looksCoded, readCodedLength } from '../length/codedLength.ts';

/** A length as it was typed, in mm, or why it is none. */
export type LengthReading =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly message: string; readonly readings?: readonly CodedReading[] };

const WITH_UNIT = /^(.*?)\s*(mm|in|inch|inches|"|″|'')?$/i;
const DECIMAL = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)$/;

/**
 * Reads a length as a caliper or a tape gives it: 30.2, 30,2, 30.2 mm, 1.1875 in, 1 3/16, 1-3/16", 3/16 in. A number
 * without a unit is in `bareUnit`; a fraction without one is inches, since nobody reads fractions of a mm. Digits that look like
 * a length in code (0244) are refused with every length they may stand for. To 1e-9 mm.
 */
export function readLength(text: string, bareUnit: 'mm' | 'in'): LengthReading {
  const [, body = '', named] = WITH_UNIT.exec(text.trim()) ?? [];
  const unit = named === undefined ? undefined : named.toLowerCase() === 'mm' ? 'mm' : 'in';
  const fraction = FRACTION.exec(body);
  if (fraction !== null) return readFraction(fraction, unit);
  if (unit === undefined && looksCoded(body)) return askWhich(body);
  if (!DECIMAL.test(body)) return refuse('expected a length, such as 30.2, 30.2 mm or 1 3/16 in');
  const value = Number(body.replace(',', '.'));
  return good((unit ?? bareUnit) === 'mm' ? value : value * MM_PER_INCH);
}

function readFraction(
  [, sign, whole = '0', over, under]: RegExpExecArray,
  unit: 'mm' | 'in' | undefined,
): LengthReading {
  if (unit === 'mm') return refuse('fractions are read as inches: write millimetres with a decimal point');
  if (Number(under) === 0) return refuse('expected a fraction of an inch, such as 3/16');
  const inches = Number(whole) + Number(over) / Number(under);
  return good((sign === '-' ? -inches : inches) * MM_PER_INCH);
}

/** Rid of what the arithmetic of inches leaves behind, so that 1 3/16 in stands as 30.1625 in a file. */
function good(mm: number): LengthReading {
  return { ok: true, mm: Number(mm.toFixed(STANDING_DECIMALS)) + 0 };
}

function askWhich(code: string): LengthReading {
  const readings = readCodedLength(code);
  const words = readings.map((reading) => reading.words).join(', or ');
  return { ok: false, message: `which is it: ${words}? Write it with its unit`, readings };
}

function refuse(message: string): LengthReading {
  return { ok: false, message };
}

/** Decimals of a mm that a typed-in length keeps: any fraction of an inch down to 1/512 is exact in them. */
const STANDING_DECIMALS = 9;

/** Finest division that a typed-in length is shown as a fraction of: what rules and imperial calipers have. */
const DIVISIONS = 64;
/** Divisions. A length this close to one is on it: rounding of the conversion. */
const ON_DIVISION = 1e-6;

/** A length for its own field, so that `readLength` reads the very same one back to 1e-4 mm: 30.2, or inches 1 3/16, 1.1893. */
export function lengthText(mm: number, unit: 'mm' | 'in'): string {
  if (unit === 'mm') return plain(mm, 4);
  const steps = (mm / MM_PER_INCH) * DIVISIONS;
  const whole = Math.round(steps);
  if (Math.abs(steps - whole) > ON_DIVISION) return plain(mm / MM_PER_INCH, 6);
  let over = Math.abs(whole) % DIVISIONS;
  let under = DIVISIONS;
  while (over !== 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const inches = Math.floor(Math.abs(whole) / DIVISIONS);
  const words = [...(inches > 0 || over === 0 ? [`${inches}`] : []), ...(over > 0 ? [`${over}/${under}`] : [])];
  return `${whole < 0 ? '-' : ''}${words.join(' ')}`;
}

function plain(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) + 0);
}
