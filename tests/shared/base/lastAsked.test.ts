import { expect, it } from 'vitest';
import { lastAsked } from '../../../shared/base/lastAsked.ts';

it('makes what is not among those asked for last, and forgets the one asked for longest ago', () => {
  const memory = new Map<string, string>();
  const made: string[] = [];
  const ask = (name: string): string =>
    lastAsked(memory, name, 2, () => {
      made.push(name);
      return name.toUpperCase();
    });
  expect(['a', 'b', 'a', 'c', 'a', 'b'].map(ask)).toEqual(['A', 'B', 'A', 'C', 'A', 'B']);
  expect(made).toEqual(['a', 'b', 'c', 'b']);
});
