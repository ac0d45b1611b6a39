/** A place in the bytes of a text file, moved forward word by word or line by line without making strings. */
export interface TextCursor {
  readonly bytes: Uint8Array;
  /** where the next word is looked for */
  at: number;
  /** bytes of the word found last: [wordFrom, wordTo) */
  wordFrom: number;
  wordTo: number;
}

const NEWLINE = 10;
const RETURN = 13;
const SPACE = 32;
const BACKSLASH = 92;
/** What may stand before the first word of a UTF-8 file. */
const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

export function textCursor(bytes: Uint8Array): TextCursor {
  const at = BYTE_ORDER_MARK.every((byte, n) => bytes[n] === byte) ? BYTE_ORDER_MARK.length : 0;
  return { bytes, at, wordFrom: at, wordTo: at };
}

/** The next word of the file, on whatever line; false at its end. */
export function nextWord(cursor: TextCursor): boolean {
  const { bytes } = cursor;
  let at = cursor.at;
  while (at < bytes.length && bytes[at]! <= SPACE) at++;
  return takeWord(cursor, at);
}

/** The next word of the present line; false at its end. A backslash that ends a line joins the next line to it. */
export function nextWordOnLine(cursor: TextCursor): boolean {
  const { bytes } = cursor;
  let at = cursor.at;
  for (;;) {
    while (at < bytes.length && bytes[at]! <= SPACE && !isLineEnd(bytes[at]!)) at++;
    if (bytes[at] !== BACKSLASH || !isLineEnd(bytes[at + 1] ?? NEWLINE)) break;
    at += bytes[at + 1] === RETURN && bytes[at + 2] === NEWLINE ? 3 : 2;
  }
  cursor.at = Math.min(at, bytes.length);
  if (at >= bytes.length || isLineEnd(bytes[at]!)) return false;
  return takeWord(cursor, at);
}

function isLineEnd(byte: number): boolean {
  return byte === NEWLINE || byte === RETURN;
}

function takeWord(cursor: TextCursor, from: number): boolean {
  const { bytes } = cursor;
  let to = from;
  while (to < bytes.length && bytes[to]! > SPACE) to++;
  cursor.wordFrom = from;
  cursor.wordTo = to;
  cursor.at = to;
  return to > from;
}

/** To the end of the present line. */
export function skipLine(cursor: TextCursor): void {
  const { bytes } = cursor;
  while (cursor.at < bytes.length && !isLineEnd(bytes[cursor.at]!)) cursor.at++;
}

/** To the first word of the next line that has one; false at the end of the file. The first line's is `nextWord`. */
export function nextLine(cursor: TextCursor): boolean {
  skipLine(cursor);
  return nextWord(cursor);
}

/** The rest of the present line as text, blanks at its ends taken off. */
export function restOfLine(cursor: TextCursor): string {
  const from = cursor.at;
  skipLine(cursor);
  return textOf(cursor.bytes.subarray(from, cursor.at)).trim();
}

/** Bytes as UTF-8 text; what is not UTF-8 becomes the replacement sign. */
export function textOf(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}

/** Whether the word found last is `word` (given in lower case), whatever its case in the file. */
export function wordIs(cursor: TextCursor, word: string): boolean {
  if (cursor.wordTo - cursor.wordFrom !== word.length) return false;
  for (let n = 0; n < word.length; n++) {
    const byte = cursor.bytes[cursor.wordFrom + n]!;
    const lower = byte >= 65 && byte <= 90 ? byte + 32 : byte;
    if (lower !== word.charCodeAt(n)) return false;
  }
  return true;
}

/** Powers of ten that float64 holds exactly. */
const EXACT_TENS = Array.from({ length: 23 }, (_, n) => Number(`1e${n}`));
const MOST_EXACT_DIGITS = 15;

/**
 * The word found last as a number, correctly rounded; NaN where it is none. Up to 15 digits and a power of ten up to 22,
 * both are exact in float64 and one multiplication or division rounds once (Clinger 1990); longer words go to the host.
 */
export function numberOfWord(cursor: TextCursor): number {
  const { bytes, wordTo } = cursor;
  let at = cursor.wordFrom;
  const minus = bytes[at] === 45;
  if (minus || bytes[at] === 43) at++;
  let whole = 0;
  let digits = 0;
  let tens = 0;
  let point = false;
  let any = false;
  for (; at < wordTo; at++) {
    const digit = bytes[at]! - 48;
    if (digit >= 0 && digit <= 9) {
      any = true;
      whole = whole * 10 + digit;
      if (whole > 0 || digits > 0) digits++;
      if (point) tens--;
      if (digits > MOST_EXACT_DIGITS) return slowNumber(cursor);
    } else if (digit === -2 && !point) point = true;
    else return slowNumber(cursor);
  }
  if (!any || -tens >= EXACT_TENS.length) return slowNumber(cursor);
  const value = whole / EXACT_TENS[-tens]!;
  return minus ? -value : value;
}

function slowNumber(cursor: TextCursor): number {
  const word = textOf(cursor.bytes.subarray(cursor.wordFrom, cursor.wordTo));
  return DECIMAL.test(word) ? Number(word) : Number.NaN;
}

/** What a mesh file may write for a number; keeps out what the host would also take, such as 0x10 or an empty word. */
const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** The next word of the line as a number; NaN where it is none or the line ends. */
export function nextNumber(cursor: TextCursor): number {
  return nextWordOnLine(cursor) ? numberOfWord(cursor) : Number.NaN;
}
