/** Where JSON text stops being JSON: offset in the text, and what is wrong there. */
export interface JsonFault {
  readonly offset: number;
  readonly message: string;
}

/**
 * The first fault in JSON text (RFC 8259), or undefined where it has none. Host engines word and place their own errors
 * differently; this one says the same on every host. Nesting deeper than 500 is refused.
 */
export function findJsonFault(text: string): JsonFault | undefined {
  try {
    const end = skipSpace(text, readValue(text, skipSpace(text, 0), 0));
    if (end < text.length) fail(end, `nothing may follow the end of the project, found ${shown(text, end)}`);
    return undefined;
  } catch (thrown) {
    if (thrown instanceof Fault) return { offset: thrown.offset, message: thrown.message };
    throw thrown;
  }
}

/** The line and column, both from 1, of an offset into text. */
export function lineAndColumn(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

const DEEPEST = 500;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const LITERAL = /true|false|null/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids bare control characters inside text
const STRING_PIECE = /(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*/y;

class Fault extends Error {
  readonly offset: number;
  constructor(offset: number, message: string) {
    super(message);
    this.offset = offset;
  }
}

function fail(offset: number, message: string): never {
  throw new Fault(offset, message);
}

function shown(text: string, offset: number): string {
  return offset >= text.length ? 'the end of the file' : JSON.stringify(text.slice(offset, offset + 12));
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && ' \t\r\n'.includes(text.charAt(at))) at++;
  return at;
}

function endOfMatch(pattern: RegExp, text: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

function readValue(text: string, at: number, depth: number): number {
  if (depth > DEEPEST) fail(at, `nested deeper than ${DEEPEST}`);
  const first = text.charAt(at);
  if (first === '{') return readMembers(text, at + 1, depth, '}');
  if (first === '[') return readMembers(text, at + 1, depth, ']');
  if (first === '"') return readString(text, at);
  return (
    endOfMatch(NUMBER, text, at) ??
    endOfMatch(LITERAL, text, at) ??
    fail(at, `expected a value, found ${shown(text, at)}`)
  );
}

function readMembers(text: string, from: number, depth: number, closing: '}' | ']'): number {
  let at = skipSpace(text, from);
  if (text.charAt(at) === closing) return at + 1;
  for (;;) {
    if (closing === '}') at = readKey(text, at);
    at = skipSpace(text, readValue(text, at, depth + 1));
    if (text.charAt(at) === closing) return at + 1;
    if (text.charAt(at) !== ',') fail(at, `expected , or ${closing}, found ${shown(text, at)}`);
    const next = skipSpace(text, at + 1);
    if (text.charAt(next) === closing) fail(at, `a comma with nothing after it before ${closing}`);
    at = next;
  }
}

function readKey(text: string, at: number): number {
  if (text.charAt(at) !== '"') fail(at, `expected a key in double quotes, found ${shown(text, at)}`);
  const colon = skipSpace(text, readString(text, at));
  if (text.charAt(colon) !== ':') fail(colon, `expected : after the key, found ${shown(text, colon)}`);
  return skipSpace(text, colon + 1);
}

function readString(text: string, at: number): number {
  const end = endOfMatch(STRING_PIECE, text, at + 1) ?? at + 1;
  if (text.charAt(end) === '"') return end + 1;
  if (text.charAt(end) === '\\') fail(end, `unknown escape ${shown(text, end)} in text; write \\\\ for a backslash`);
  return fail(end, 'text in quotes is not closed on its line');
}
