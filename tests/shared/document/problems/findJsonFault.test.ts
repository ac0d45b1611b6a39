import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { findJsonFault, lineAndColumn } from '../../../../shared/document/problems/findJsonFault.ts';

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

it.each([
  ['', 0, 'expected a value, found the end of the file'],
  ['{"a":1,}', 6, 'a comma with nothing after it before }'],
  ['[1 2]', 3, 'expected , or ], found "2]"'],
  ['{a:1}', 1, 'expected a key in double quotes, found "a:1}"'],
  ['{"a" 1}', 5, 'expected : after the key, found "1}"'],
  ["['x']", 1, 'expected a value, found "\'x\']"'],
  ['"a\\x"', 2, 'unknown escape "\\\\x\\"" in text; write \\\\ for a backslash'],
  ['"a\nb"', 2, 'text in quotes is not closed on its line'],
  ['[01]', 2, 'expected , or ], found "1]"'],
  ['{} {}', 3, 'nothing may follow the end of the project, found "{}"'],
  ['[NaN]', 1, 'expected a value, found "NaN]"'],
])('%j breaks at %i', (text, offset, message) => {
  expect(findJsonFault(text)).toEqual({ offset, message });
});

it('agrees with the host on ten thousand spoilt texts', () => {
  const sound = JSON.stringify({ a: [1, -2.5e-7, true, null, 'x\u0041"\\/\n', { b: {} }, []], '': '' }, null, 1);
  const random = seededRandom(11);
  const marks = '{}[]",:\\ \n\t0123456789.eE+-truefalsnu/x';
  for (let i = 0; i < 10_000; i++) {
    const at = Math.floor(random() * sound.length);
    const mark = marks.charAt(Math.floor(random() * marks.length));
    const text = sound.slice(0, at) + mark + sound.slice(at + Math.floor(random() * 3));
    expect([text, findJsonFault(text) === undefined]).toEqual([text, parses(text)]);
  }
});

it('refuses nesting that could exhaust the stack, and takes deep but sane nesting', () => {
  expect(findJsonFault('['.repeat(100_000))?.message).toMatch(/nested deeper/);
  expect(findJsonFault('['.repeat(400) + ']'.repeat(400))).toBeUndefined();
});

it('counts lines and columns from one, with either line end', () => {
  expect(lineAndColumn('a\nb\r\ncd', 6)).toEqual({ line: 3, column: 2 });
  expect(lineAndColumn('', 0)).toEqual({ line: 1, column: 1 });
});
