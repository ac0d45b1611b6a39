/** Text as UTF-8 (RFC 3629), written out because the host's encoder is not of the language. Lone surrogates become U+FFFD. */
export function utf8Bytes(text: string): Uint8Array {
  const bytes: number[] = [];
  for (const letter of text) {
    const point = letter.codePointAt(0) ?? 0;
    pushPoint(bytes, point >= 0xd800 && point <= 0xdfff ? 0xfffd : point);
  }
  return Uint8Array.from(bytes);
}

function pushPoint(bytes: number[], point: number): void {
  const tail = (shift: number): number => 0x80 | ((point >> shift) & 0x3f);
  if (point < 0x80) bytes.push(point);
  else if (point < 0x800) bytes.push(0xc0 | (point >> 6), tail(0));
  else if (point < 0x10000) bytes.push(0xe0 | (point >> 12), tail(6), tail(0));
  else bytes.push(0xf0 | (point >> 18), tail(12), tail(6), tail(0));
}
