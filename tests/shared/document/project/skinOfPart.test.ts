import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { bodyOfPart, fitsPattern, skinOfPart } from '../../../../shared/document/project/skinOfPart.ts';
import { sampleProject } from '../../../arbitraries/projects.ts';

it.each([
  ['exhaust*', 'exhaust', true],
  ['exhaust*', 'exhaust-left', true],
  ['exhaust*', 'my-exhaust', false],
  ['*bracket*', 'bracket', true],
  ['*bracket*', 'left bracket 2', true],
  ['a*a', 'a', false],
  ['a*a', 'aa', true],
  ['a*b*c', 'axxbxxc', true],
  ['a*bc*bc', 'abc', false],
  ['tub', 'Tub', false],
  ['*', '', true],
  ['a.c', 'abc', false],
  ['(', '(', true],
])('%s on %s: %s', (pattern, name, fits) => {
  expect(fitsPattern(pattern, name)).toBe(fits);
});

it('agrees with a regular expression on random patterns', () => {
  const random = seededRandom(3);
  const word = (letters: string, longest: number): string =>
    Array.from({ length: Math.floor(random() * longest) }, () =>
      letters.charAt(Math.floor(random() * letters.length)),
    ).join('');
  for (let i = 0; i < 5000; i++) {
    const pattern = word('ab*', 7);
    const name = word('ab', 8);
    const oracle = new RegExp(`^${pattern.replaceAll('*', '.*')}$`);
    expect([pattern, name, fitsPattern(pattern, name)]).toEqual([pattern, name, oracle.test(name)]);
  }
});

it('gives the first skin and body that fit, else plain and the chassis', () => {
  const project = sampleProject();
  expect(skinOfPart(project, 'exhaust-bracket').id).toBe('exhaust');
  expect(skinOfPart(project, 'frame').id).toBe('plain');
  expect(bodyOfPart(project, 'exhaust-bracket').id).toBe('engine');
  expect(bodyOfPart(project, 'frame').id).toBe('chassis');
});
