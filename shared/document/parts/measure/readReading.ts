import { readLength } from '../readLength.ts';
import type { Reading } from './readings.ts';

/** A reading as a number, mm or degrees, or why it is none, in a sentence. */
export type ReadingResult =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string };

/** One reading as it was typed; a bare number of a length is in `unit`. Lengths are above 0, the bend between 0 and 180. */
export function readReading(reading: Reading, text: string, unit: 'mm' | 'in'): ReadingResult {
  if (reading.unit === 'deg') {
    const value = text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'));
    return value > 0 && value < 180 ? { ok: true, value } : refuse('expected degrees between 0 and 180');
  }
  const read = readLength(text, unit);
  if (!read.ok) return read;
  return read.mm > 0 ? { ok: true, value: read.mm } : refuse('expected a length above 0');
}

function refuse(message: string): ReadingResult {
  return { ok: false, message };
}
